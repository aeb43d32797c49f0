import { cellWords } from '../../cells/shared/words.ts'
import { stepsWords } from '../../cells/steps/words.ts'
import { agree, plural } from '../../units/plural.ts'
import { exactFigure } from '../../units/words.ts'
import { examplesText, WITH_EXAMPLE, waitingText } from '../common/words.ts'

const failingText = (n: number): string => `${plural(n, 'check')} ${agree(n, 'fails', 'fail')}`
const marginalText = (n: number): string => `${plural(n, 'check')} ${agree(n, 'is', 'are')} marginal`

export const standWords = {
  /** The ways to look at the stand. */
  views: 'View',
  check: 'Check first',
  oneStep: 'One step',
  allFigures: 'All figures',
  awake: {
    held: 'The screen stays on.',
    asked: '',
    refused:
      'The screen may turn off: the browser refuses to keep it on. Press anywhere to ask again, or set the device to stay on.',
    cannot: 'The screen may turn off: this browser cannot keep it on. Set the device to stay on.',
  },

  steps: 'Steps',
  stepIs: (number: number, text: string, done: boolean): string => `Step ${number}: ${text}${done ? ', done' : ''}`,
  done: stepsWords.done,
  noText: stepsWords.noText,
  targetComputed: 'Target, computed',
  targetPlanned: 'Target',
  /** Under or over a figure that is an example's, or is computed from such. */
  exampleFigure: (isGiven: boolean): string => (isGiven ? 'the example’s figure' : WITH_EXAMPLE),
  measuredByYou: 'Measured by you',
  reading: (label: string): string => `${label}, your reading`,
  lock: 'Lock',
  unlock: 'Unlock',
  lockThis: (label: string): string => `Lock ${label}`,
  unlockThis: (label: string): string => `Unlock ${label}`,
  locked: 'locked: unlock it to change it',
  exactFigure,
  onTarget: 'On target. Continue.',
  /** What to do about a difference; a hint for setting it comes first. */
  orUse: (action: string, measured: string): string =>
    `${action}, or continue with ${measured}: what follows then uses it, and the target stays as it is.`,
  correctTo: (target: string): string => `Correct it to ${target}`,
  back: 'Back',
  next: (number: number): string => `Next, step ${number}:`,
  nothingNext: 'This is the last step.',
  doneNext: 'Done, next step',
  doneLast: 'Done',
  nextStep: 'Next step',
  toFigures: 'To all figures',
  notDone: 'Mark as not done',
  startOver: stepsWords.startOver,
  allDone: (n: number): string => (n === 1 ? 'The step is done.' : `All ${plural(n, 'step')} done.`),

  frame: 'Frame',
  framesTaken: 'Frames taken',
  ofFrames: (of: number): string => `of ${of}`,
  frameTaken: (number: number): string => `Frame ${number} taken`,
  oneFrameTaken: 'Frame taken',
  frameBack: 'Undo the last frame',
  allFrames: (n: number): string => (n === 1 ? 'The frame is taken.' : `All ${plural(n, 'frame')} taken.`),
  thenMove: (what: 'camera' | 'board', way: string): string => `Then move the ${what} ${way}.`,
  toTheRight: (by: string): string => `${by} to the right`,
  toTheLeft: (by: string): string => `${by} to the left`,
  up: (by: string): string => `${by} up`,
  down: (by: string): string => `${by} down`,
  lastFrame: 'This is the last frame.',

  toMeasure: 'to measure',
  measured: 'measured',
  now: 'now',
  stepDone: 'done',
  goToStep: (step: number): string => `Go to step ${step}`,
  backToStep: (number: number): string => `Back to step ${number}`,
  fails: (n: number): string => `${failingText(n)}:`,
  marginal: (n: number): string => `${marginalText(n)}:`,
  allPass: 'No check fails.',
  nothingMarkedBefore: 'No figure is marked for the stand yet. In ',
  build: 'Build',
  nothingMarkedAfter: `, open a given, a result or a check and tick “${cellWords.atTheStand}”.`,
  meanwhile: 'Until then, the results of one section:',
  sections: 'Section to show',
  beforeSections: 'Before the first section',

  checkTitle: 'Check before you shoot',
  checkAbout: 'What is still open in this sheet. You can continue without it.',
  nothingOpen: 'Every figure is yours, and no check fails.',
  stillExample: examplesText,
  failing: failingText,
  waiting: waitingText,
  isMarginal: marginalText,
  needs: (names: string): string => `needs ${names}`,
  change: 'Change',
  changeThis: (label: string): string => `Change ${label}`,
  useThis: (text: string): string => `Use ${text}`,
  useThisFor: cellWords.useFor,
  /** Of a table that still is the example's. */
  rows: (n: number): string => plural(n, 'row'),
  useRows: 'Use these rows',
  useRowsOf: (label: string): string => `Use these rows: ${label}`,
  start: (number: number): string => `Start at step ${number}`,
}
