/** The usual cautions: shown before the first set and printed on every sheet. Common practice, no source. */
export const generalCautions: readonly string[] = [
  'Warm up before the first rep, and build up to race pace.',
  'Stop at pain, dizziness or loss of control; the judge may stop the set at any time.',
  'Keep the rebound zone and the jump lane clear of people, balls and bottles.',
  'Check grip and floor: shoes that hold, a dry floor, dry hands.',
  'Mind heat and water: drink, cool down, and take a break when you need one.',
  'Loads and heights are for a qualified coach to choose.',
  'The rulebook of your own event and its head judge decide what counts; these sheets are practice.',
  'This tool gives no medical advice. Local rules come first.',
];
