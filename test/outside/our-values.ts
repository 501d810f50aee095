import { ourJudges } from './our-judges.ts';
import { ourModels } from './our-models.ts';
import { ourProportions } from './our-proportions.ts';

/** By the name of a published example: from its input, our figures under the example's own keys. */
export type OurValues = Readonly<Record<string, (input: Record<string, unknown>) => Record<string, number>>>;

/** Every published example that one of the methods answers. */
export const ourValues: OurValues = { ...ourProportions, ...ourJudges, ...ourModels };

/** Examples that no method here answers, and why. */
export const unanswered: Readonly<Record<string, string>> = {
  '4-indredavik-mh': 'printed value is a slip of what is quoted; the Mantel-Haenszel variant is not built',
  '8-2afc': 'the drills are yes-or-no tasks; forced choice is not built',
  '9-esoph': 'data come with R: compared there, with the random inputs',
  '14-law-r': 'correlation and jackknife are not among the methods',
  '16-rasch-mml': 'Rasch models are not among the methods',
  '17-winter': 'the figure, not the sums',
  '17-plagenhoef': 'the figure, not the sums',
  '17-projectile': 'the figure, not the sums',
  '18-ntp-coulouris': 'clocks, not the sums',
  '18-cristian': 'clocks, not the sums',
  '19-rfc4180-quote': 'exports, not the sums',
  '19-rfc4180-shape': 'exports, not the sums',
  '19-iso8601-dur': 'exports, not the sums',
  '19-owasp-formula': 'exports, not the sums',
  '0-segments': 'the figure, not the sums',
  '0-projectile': 'the figure, not the sums',
};

/** Single figures of answered examples that are not answered, and why. */
export const unansweredFigures: Readonly<Record<string, string>> = {
  '0-dprime-loglinear.dPrime': 'the given 3.961 is cut off, not rounded: R gives 3.96150, with which ours is compared',
  '5-cohen1960.se_cohen': "Cohen's own approximation of 1960; the standard error of 1969 is built",
  '5-cohen1960.se0_cohen': "Cohen's own approximation of 1960",
  '5-cohen1960.lower': "from Cohen's approximation",
  '5-cohen1960.upper': "from Cohen's approximation, rounded before use",
  '11-power1.siglev': 'the significance is given, never solved for',
  '12-tuna.p_asym': 'normal approximation without continuity correction; ours is exact here',
  '13-tea.p_greater': 'the test is two-sided only',
  '13-tea.or_cond': 'conditional odds ratio is not built',
  '13-tea.lower_greater': 'conditional odds ratio is not built',
  '11-negbin-mites.mean': 'mean of the data, no method',
  '11-negbin-mites.k': 'estimating the dispersion is not built',
};
