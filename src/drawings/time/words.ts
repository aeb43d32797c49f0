/** The texts in and below the dial of exposure times. */
export const TIME_WORDS = {
  time: 'The exposure time',
  setTime: 'The time set',
  timeUnknown: 'the exposure time is unknown.',
  outsideMarks: 'No mark is drawn: the time is outside the marked times from 60 s to 1/8000 s.',
  head: 'Third-stop marks of the time',
  setTo: (mark: string, difference: string) => [`time set: ${mark}, ${difference} stop`, `time set: ${mark}`],
  description: (exact: string, mark: string, difference: string) =>
    `The exposure time is ${exact}. The nearest third-stop mark is ${mark}, ${difference} stop from it; more exposure counts as plus.`,
  exact: (exact: string) => `The exposure time is ${exact}.`,
  set: (mark: string, difference: string) => `The time set is ${mark}, ${difference} stop from the exact time.`,
  marks: (list: string) => `Marks drawn: ${list}.`,
}
