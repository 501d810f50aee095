/** How each figure is computed: the method by name, and its source. */
export function reviewHowWords() {
  const interval = 'Intervals hold the true value 95 times in 100.';
  return {
    rate: [
      'Each point is no-reps over attempts with Wilson’s score interval (Wilson 1927).',
      'The band is a logistic regression on the date of the set. Sets differ more than chance alone would have it, so the band and the verdict allow for over-dispersion (quasi-binomial, Wedderburn 1974; Student’s t).',
      'The dashes are control limits of the p′-chart (Laney 2002), wider for short sets.',
      'The rate over all has Wilson’s interval on a sample divided by its design effect (Rao & Scott 1992): the attempts of one set hang together.',
      '“More reps would tell”: how many until a change of the size seen would be told with a power of 80 % at 5 %.',
    ],
    reasons: {
      base: [
        'A no-rep costs the time between the counted reps around it, less a clean cycle there, less breaks marked. What a clean cycle takes is a local fit through the set’s own clean cycles (LOWESS, Cleveland 1979).',
        'A no-rep with two faults counts half for each. Reasons stand in the order of the seconds they take per 100 counted reps, not of their number.',
      ],
      'between-sets':
        'Intervals: the ratio of two sums with its variance between sets (Cochran 1977, 6.3; Student’s t).',
      'within-sets':
        'Below five sets the spread between them says too little: intervals are those of the sets’ own bootstraps, combined.',
    },
    place: [
      'Points are tenths of the set with Wilson’s intervals (1927).',
      'The curve is a logistic regression of no-rep on the part of the set gone by; its band is robust to the attempts of one set hanging together (Liang & Zeger 1986).',
      'Even: the 90 % interval of the odds, end over start, lies within 2/3 to 3/2 (two one-sided tests, Schuirmann 1987; the margin is our own).',
    ],
    hurry: [
      'The time of each attempt that follows a counted rep, over the clean cycle expected there. Points are bins with Wilson’s intervals (1927).',
      'The curve is a logistic regression of no-rep on that share, from 50 to 150 %, with a band robust to sets (Liang & Zeger 1986).',
    ],
    picture: [
      'Each mark is one attempt in the order of the set; its height is the time since the attempt before it, all rows on one scale.',
    ],
    ledgers: ['Every millisecond from go to finish stands on exactly one line, so the lines add up to the clock.'],
    pacing: [
      'The change of the clean cycles from the first to the last of a set is the Theil-Sen slope (Theil 1950, Sen 1968), as a share of the set’s median clean cycle.',
      'Below 5 % it passes for even (our own choice).',
      'Whether no-reps follow a fast start: logistic regression over sets of the no-reps after the first quarter on how much quicker that quarter was, with over-dispersion.',
    ],
    compare: [
      'Each rate has Wilson’s interval (1927) on a sample divided by its design effect (Rao & Scott 1992); their difference is Newcombe’s hybrid score interval (1998).',
      'Seconds per 100 are ratios of sums over sets (Cochran 1977, 6.3).',
      'More reps: how many more in the second group until a difference of the size seen would be told with a power of 80 % at 5 %.',
    ],
    forecast: [
      'The rate comes from a Beta posterior with Jeffreys’ prior; sets vary about it beta-binomially. No-reps until the goal is reached are negative binomial; their seconds are drawn from the costs seen.',
      'Bars and lines are the middle of 4,000 drawn sets and the span that holds 95 in 100 of them. It rests on the latest 60 sets.',
    ],
    beside: [
      'The difference to the other judges is Mantel and Haenszel’s over athletes and stations (Greenland & Robins 1985; variance by Sato 1989), widened by the spread between sets.',
      'Alike: the 90 % interval lies within two no-reps in 100 either way (our own margin).',
      'It is no proof of strictness: the athletes may have been in other form on those days.',
    ],
    drift: [
      'Sets less than three hours apart are one session. The curve is a logistic regression on the hours since its first go, each athlete’s own rate held beside it, robust by session (Liang & Zeger 1986).',
    ],
    share: ['Wilson’s score interval (1927).'],
    train: [
      'First comes the reason that takes the most seconds. How sure that is: the share of bootstrap resamples of whole sets in which it stays first (Davison & Hinkley 1997, 3.8); below five sets from draws of each fault’s number and cost (Rubin 1981).',
    ],
    plan: [
      'The target is what the wished time leaves for each rep after the start, the no-reps expected at the present rate and the athlete’s own breaks. It is within reach as long as the athlete has held that pace over a whole set.',
    ],
    interval,
  };
}
