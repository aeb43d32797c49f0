import { type FunctionRecord, number } from '../language/index.ts'
import { LENGTH, NONE } from '../units/index.ts'

const RATIO = number(NONE, 'ratio')

/** Sections 2 and 3 of the trade: size on the sensor, the column, getting closer. */
export const CLOSE_FOCUS: readonly FunctionRecord[] = [
  {
    name: 'lens_to_original',
    subject: 'close-focus',
    about: 'Distance from the front principal plane to the original.',
    parameters: [
      { name: 'focal', type: number(LENGTH), about: 'focal length', range: { above: 0 } },
      { name: 'magnification', type: RATIO, about: 'image size over original size', range: { above: 0 } },
    ],
    result: number(LENGTH),
    formula: 'f (1 + 1/m)',
    source: 'thin-lens equation; derived: 1/u + 1/v = 1/f with m = v/u',
    validity: 'A lens focused as a whole; from the front principal plane.',
    examples: [
      { formula: 'lens_to_original(60 mm, 1:4)', gives: '300 mm' },
      { formula: 'lens_to_original(0 mm, 1:4)', refuses: 'focal' },
    ],
    compute: (focal: number, magnification: number) => focal * (1 + 1 / magnification),
  },
]
