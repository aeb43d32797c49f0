import { type FunctionRecord, number, Refusal } from '../../language/index.ts'
import { LENGTH, NONE } from '../../units/index.ts'
import { parameter, positiveLength } from '../maths/parameters.ts'
import {
  FOCAL,
  inMillimetres,
  MAGNIFICATION,
  MAGNIFICATION_OR_NONE,
  MOVES_AS_A_WHOLE,
  PUPIL_RATIO,
} from './lens-parameters.ts'

/** Distances from the pupils, by which things look larger or smaller. */
export const PERSPECTIVE: readonly FunctionRecord[] = [
  {
    name: 'entrance_distance',
    subject: 'close-focus',
    about: 'Distance from the entrance pupil to the original: it decides perspective and evenness.',
    also: ['entrance pupil', 'nodal point', 'no-parallax point', 'perspective'],
    parameters: [FOCAL, MAGNIFICATION, PUPIL_RATIO],
    result: number(LENGTH),
    formula: 'f (1/m + 1/p)',
    source:
      'derived: the pupils are images of each other at magnification p, so the entrance pupil is f (1 − 1/p) from the front principal plane',
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'entrance_distance(60 mm, 1:4)', gives: '300 mm' },
      { formula: 'entrance_distance(60 mm, 1:4, 0.8)', gives: '315 mm' },
      { formula: 'entrance_distance(60 mm, 0)', refuses: 'magnification' },
    ],
    compute: (focal: number, magnification: number, pupilRatio: number) => focal * (1 / magnification + 1 / pupilRatio),
  },
  {
    name: 'exit_distance',
    subject: 'close-focus',
    about:
      'The distance of perspective on the sensor side: from there the image is seen under the same angles as the original is from the lens.',
    parameters: [FOCAL, MAGNIFICATION_OR_NONE, PUPIL_RATIO],
    result: number(LENGTH),
    formula: 'f (1 + m/p)',
    source: 'derived: m times the entrance distance f (1/m + 1/p)',
    validity: MOVES_AS_A_WHOLE,
    cautions: [
      'The angles are those on the original’s side. The exit pupil itself is p times as far from the sensor: exit_pupil_distance gives that.',
    ],
    examples: [
      { formula: 'exit_distance(60 mm, 1:4)', gives: '75 mm' },
      { formula: 'exit_distance(60 mm, 1:4, 0.8)', gives: '78.75 mm' },
      { formula: 'exit_distance(60 mm, 1:4, 0)', refuses: 'pupil_ratio' },
    ],
    compute: (focal: number, magnification: number, pupilRatio: number) => focal * (1 + magnification / pupilRatio),
  },
  {
    name: 'exit_pupil_distance',
    subject: 'close-focus',
    about: 'Distance from the exit pupil to the sensor: it sets how steeply light meets the corners.',
    also: ['exit pupil', 'telecentric'],
    parameters: [FOCAL, MAGNIFICATION_OR_NONE, PUPIL_RATIO],
    result: number(LENGTH),
    formula: 'f (p + m)',
    source: 'derived: the exit pupil is f (1 − p) behind the rear principal plane, the sensor f (1 + m)',
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'exit_pupil_distance(60 mm, 1:4)', gives: '75 mm' },
      { formula: 'exit_pupil_distance(60 mm, 1:4, 0.8)', gives: '63 mm' },
      { formula: 'exit_pupil_distance(60 mm, 1:4, 0)', refuses: 'pupil_ratio' },
    ],
    compute: (focal: number, magnification: number, pupilRatio: number) => focal * (pupilRatio + magnification),
  },
  {
    name: 'scale_change',
    subject: 'close-focus',
    about: 'How much larger a part of the original is imaged that is above the plane in focus.',
    also: ['perspective', 'telecentric error', 'height change'],
    parameters: [
      parameter('height', number(LENGTH), 'above the plane in focus; negative for a part below it'),
      positiveLength('entrance_distance', 'from the entrance pupil to the plane in focus'),
    ],
    result: number(NONE),
    formula: 'u/(u − z)',
    source: 'derived: central projection from the entrance pupil',
    examples: [
      { formula: 'scale_change(10 mm, 500 mm)', gives: '1.0204081632653', within: '1e-12' },
      { formula: 'scale_change(-10 mm, 500 mm)', gives: '0.9803921568627', within: '1e-12' },
      { formula: 'scale_change(500 mm, 500 mm)', refuses: 'entrance pupil' },
    ],
    compute: (height: number, distance: number) => {
      if (height >= distance)
        throw new Refusal(
          `“height” of ${inMillimetres(height)} reaches the entrance pupil, ${inMillimetres(distance)} away. Raise the camera.`,
          'height',
        )
      return distance / (distance - height)
    },
  },
]
