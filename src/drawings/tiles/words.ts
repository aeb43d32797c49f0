import { plural } from '../../units/plural.ts'
import { INPUTS } from '../canvas/words.ts'

/** The texts in and below a drawing of the frames. */
export const TILES_WORDS = {
  originalWidth: INPUTS.originalWidth,
  originalHeight: INPUTS.originalHeight,
  frameWidth: 'The width of a frame',
  frameHeight: 'The height of a frame',
  border: 'The border',
  overlap: 'The overlap',
  sizeUnknown: 'the size of the original or of a frame is unknown.',
  overlapTooLarge: (overlap: string, side: string) =>
    `No frames are drawn: the overlap of ${overlap} must be less than the shorter side of a frame, ${side}.`,
  tooMany: (most: number) => `No frames are drawn: more than ${most} would be needed.`,

  wholeInOne: (turned: boolean) => `One frame${turned ? ', turned,' : ''} covers the original`,
  frames: (count: number, turned: boolean, columns: number, rows: number) =>
    `${plural(count, 'frame')}${turned ? ', turned' : ''}: ${columns} across, ${rows} down`,
  order: (order: string) => `Order: ${order} from 1`,
  backAndForth: 'back and forth',
  rowByRow: 'row by row',
  original: 'original',
  frame: 'frame',
  overlapLabel: 'overlap',

  frameOf: (size: string) => `frame of ${size}`,
  turned: ', turned',
  originalIs: (size: string, border: string | undefined) =>
    `The original, ${size}${border === undefined ? '' : ` with a border of ${border}`}, is`,
  coveredByOne: (original: string, frame: string) =>
    `${original} covered by one ${frame}; its centre is that of the original.`,
  coveredBy: (original: string, count: number, size: string, turned: boolean, columns: number, rows: number) =>
    `${original} covered by ${plural(count, 'frame')} of ${size}${turned ? ', turned' : ''}: ${columns} across, ${rows} down.`,
  sideBySide: (overlap: string) => `${overlap} side by side`,
  oneBelow: (overlap: string) => `${overlap} one below the other`,
  overlaps: (list: string) => `They overlap by ${list}; the overlaps are hatched.`,
  centres: (columns: string, rows: string, unit: string) =>
    `Centres of the columns from the left edge of the original: ${columns} ${unit}; of the rows from its lower edge, the uppermost first: ${rows} ${unit}.`,
  orderBackAndForth: 'The order starts at the upper left and goes back and forth.',
  orderRowByRow: 'The order starts at the upper left and goes row by row, each from the left.',
  boardMoves: 'The board moves the opposite way: to the left and up for a frame on the right and below.',
  boardTable: (unit: string) => ['Frame', `Board to the right, ${unit}`, `Board up, ${unit}`],
  cameraTable: (unit: string) => ['Frame', `From the left edge, ${unit}`, `From the lower edge, ${unit}`],
}
