/** The texts in and below a ledger of stops. */
export const LEDGER_WORDS = {
  noStops: 'no stops are known.',
  startUnknown: 'The light values are not drawn: the metered one is unknown. Stops are counted from it.',
  startUnusable: 'The light values are not drawn: the metered one must be a light value.',
  namesUnusable: 'The entries are not named: their names must be texts.',
  entry: (number: number) => `entry ${number}`,
  notStops: (name: string) => `“${name}” is left out: it must be a number of stops.`,
  tooMany: (name: string, most: number) => `“${name}” is left out: at most ${most} entries are drawn.`,

  metered: 'metered',
  set: 'set',
  ev: (figure: string) => `${figure} EV`,
  evUnit: 'EV',
  stopsUnit: 'stops',
  moreExposure: 'more exposure',

  introduction: 'Stops added to the reading and subtracted from it.',
  reading: (ev: string) => `The reading is ${ev}.`,
  entries: (list: string) => `In order; more exposure counts as plus: ${list}.`,
  step: (name: string, stops: string) => `${name} ${stops}`,
  stepTo: (name: string, stops: string, ev: string) => `${name} ${stops} to ${ev}`,
  unchanged: 'No change in total',
  total: (stops: string, more: boolean) => `${stops} stops ${more ? 'more' : 'less'} exposure in total`,
  result: (total: string) => `${total}.`,
  resultToSet: (total: string, ev: string) => `${total}; set ${ev}.`,
}
