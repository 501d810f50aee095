# Plain base-R versions of methods that base R lacks, written from their papers for the comparison only.

# A binomial fit repeated from its own estimate, since glm's standard errors come from the last but one iteration.
settled_glm <- function(formula, link = "logit") {
  family <- quasibinomial(link); control <- glm.control(epsilon = 1e-14, maxit = 100)
  fit <- glm(formula, family = family, control = control)
  for (i in 1:3) fit <- glm(formula, family = family, control = control, start = coef(fit))
  fit
}

# Liang & Zeger (1986): coefficients and cluster-robust standard errors of a logistic fit, times G/(G-1).
cluster_logit <- function(y, x, g) {
  fit <- settled_glm(y ~ x)
  X <- model.matrix(fit); bread <- summary(fit)$cov.unscaled; scores <- rowsum(X * (y - fitted(fit)), g)
  n <- nrow(scores); V <- bread %*% crossprod(scores) %*% bread * n / (n - 1)
  c(coef(fit), sqrt(diag(V)))
}

# Firth (1993): maximum of the penalised log-likelihood by Newton steps on a numerical score.
firth_logit <- function(y, n, x) {
  X <- cbind(1, x)
  penalised <- function(b) { e <- as.vector(X %*% b); p <- plogis(e)
    sum(y * plogis(e, log.p = TRUE) + (n - y) * plogis(-e, log.p = TRUE)) +
      0.5 * as.numeric(determinant(crossprod(X, X * (n * p * (1 - p))))$modulus) }
  score <- function(b) { p <- plogis(as.vector(X %*% b)); w <- n * p * (1 - p); I <- crossprod(X, X * w)
    h <- rowSums((X %*% solve(I)) * X) * w; as.vector(crossprod(X, y - n * p + h * (0.5 - p))) }
  b <- optim(rep(0, ncol(X)), function(b) -penalised(b), function(b) -score(b), method = "BFGS",
             control = list(maxit = 1000, reltol = 1e-15))$par
  for (i in 1:20) { p <- plogis(as.vector(X %*% b)); b <- b + solve(crossprod(X, X * (n * p * (1 - p))), score(b)) }
  c(b, penalised(b))
}

# Profile of the same over the slope of one predictor: the distance from the maximum, to find its limits with.
firth_profile_limits <- function(y, n, x, level = 0.95) {
  X <- cbind(1, x); best <- firth_logit(y, n, x)
  penalised <- function(b) { e <- as.vector(X %*% b); p <- plogis(e)
    sum(y * plogis(e, log.p = TRUE) + (n - y) * plogis(-e, log.p = TRUE)) +
      0.5 * as.numeric(determinant(crossprod(X, X * (n * p * (1 - p))))$modulus) }
  profile <- function(s) optimize(function(a) penalised(c(a, s)), range(-s * x) + c(-20, 20),
                                  maximum = TRUE, tol = 1e-10)$objective
  gap <- function(s) best[3] - profile(s) - qchisq(level, 1) / 2
  step <- 1 / sd(x); up <- step; while (gap(best[2] + up) < 0) up <- up * 2
  low <- step; while (gap(best[2] - low) < 0) low <- low * 2
  c(uniroot(gap, c(best[2] - low, best[2]), tol = 1e-10)$root, uniroot(gap, c(best[2], best[2] + up), tol = 1e-10)$root)
}
