import { type FunctionRecord, list, number, Refusal, record, YES_NO } from '../../language/index.ts'
import { LENGTH, RECIPROCAL_LENGTH } from '../../units/index.ts'
import { F_NUMBER, length, NOT_NEGATIVE, POSITIVE, parameter, positiveLength, RATIO } from '../maths/parameters.ts'
import {
  APERTURE,
  FOCAL,
  inMillimetres,
  LENS_MAGNIFICATION,
  MAGNIFICATION_OR_NONE,
  MOVES_AS_A_WHOLE,
  PUPIL_RATIO,
} from './lens-parameters.ts'
import { stackOf } from './lens-stack.ts'
import { type TubeChoice, tubeChoices } from './tube-choices.ts'

const POWER = parameter('power', number(RECIPROCAL_LENGTH), 'power of the close-up lens', { range: POSITIVE })
const NO_LIGHT_LOST =
  'The added lens costs no light: give extension_shift the magnification the lens itself is set to, never this one.'

const TUBE_CHOICE = record('tube choice', {
  tubes: list(number(LENGTH)),
  extension: number(LENGTH),
  least: RATIO,
  greatest: RATIO,
  covers: YES_NO,
})

/** Getting closer by tubes and close-up lenses. */
export const CLOSE_FOCUS: readonly FunctionRecord[] = [
  {
    name: 'tube_magnification',
    subject: 'close-focus',
    about: 'Magnification with an extension tube behind the lens.',
    also: ['extension tube', 'extension ring', 'macro'],
    parameters: [FOCAL, length('extension', 'length of the tubes together'), LENS_MAGNIFICATION],
    result: RATIO,
    formula: 'm = m₀ + e/f',
    source: 'derived: image distance f (1 + m₀) + e = f (1 + m)',
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'tube_magnification(50 mm, 25 mm)', gives: '1:2' },
      { formula: 'tube_magnification(50 mm, 25 mm, 0.15)', gives: '0.65' },
      { formula: 'tube_magnification(50 mm, -5 mm)', refuses: 'extension' },
    ],
    compute: (focal: number, extension: number, own: number) => own + extension / focal,
  },
  {
    name: 'extension_for',
    subject: 'close-focus',
    about: 'Extension that gives a required magnification.',
    also: ['bellows', 'extension tube', 'extension ring', 'bellows draw', 'macro'],
    parameters: [FOCAL, MAGNIFICATION_OR_NONE, LENS_MAGNIFICATION],
    result: number(LENGTH),
    formula: 'e = f (m − m₀)',
    source: 'derived: image distance f (1 + m₀) + e = f (1 + m)',
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'extension_for(50 mm, 1:2)', gives: '25 mm' },
      { formula: 'extension_for(50 mm, 1:2, 0.15)', gives: '17.5 mm' },
      { formula: 'extension_for(50 mm, 0.1, 0.15)', refuses: 'no tube' },
    ],
    compute: (focal: number, magnification: number, own: number) => {
      if (magnification < own)
        throw new Refusal(
          '“lens_magnification” is already above “magnification”, so no tube is needed. Focus the lens on a greater distance.',
          'lens_magnification',
        )
      return focal * (magnification - own)
    },
  },
  {
    name: 'closeup_stack',
    subject: 'close-focus',
    about: 'Power of close-up lenses screwed together, and how far in front of the first the original is.',
    also: ['close-up lens', 'dioptre', 'diopter', 'supplementary lens'],
    parameters: [
      parameter(
        'powers',
        list(number(RECIPROCAL_LENGTH)),
        'from the front, the original’s side, to the camera; negative of a diverging lens',
      ),
      length('spacing', 'from each lens to the next', { default: '0 mm' }),
    ],
    result: record('close-up stack', {
      power: number(RECIPROCAL_LENGTH),
      front_focus: number(LENGTH),
      back_focus: number(LENGTH),
    }),
    formula:
      'ray matrices from front to camera, (A B; C D): P = −C, front focus = D/P, back focus = A/P; two lenses: P₁ + P₂ − d P₁ P₂',
    source: 'derived: 2 × 2 ray-transfer matrices; the two-lens case is Gullstrand’s equation',
    validity: 'Thin lenses; spacing between their principal planes. The main lens is focused at infinity.',
    cautions: ['The original is at the front focus, measured from the front lens, not at 1/P.'],
    examples: [
      { formula: 'closeup_stack({1 dpt, 2 dpt, 4 dpt}, 8 mm).power', gives: '6.8565 dpt', within: '0.0001 dpt' },
      { formula: 'closeup_stack({2 dpt, 3 dpt}).front_focus', gives: '200 mm' },
      // Behind the last of two lenses: (1 − d P₁)/P = 0.98/5.92.
      { formula: 'closeup_stack({2 dpt, 4 dpt}, 10 mm).back_focus', gives: '165.54 mm', within: '0.01 mm' },
      { formula: 'closeup_stack({2 dpt, 4 dpt}, 10 mm).power', gives: '5.92 dpt' },
      { formula: 'closeup_stack({5 dpt, -2 dpt}).power', gives: '3 dpt' },
      { formula: 'closeup_stack({2 dpt, -2 dpt})', refuses: 'focus' },
      { formula: 'closeup_stack({10 dpt, 10 dpt}, 150 mm)', refuses: 'spacing' },
    ],
    compute: (powers: readonly number[], spacing: number) => {
      if (powers.length === 0)
        throw new Refusal('“powers” is empty. Name at least one close-up lens, as in {2 dpt}.', 'powers')
      const stack = stackOf(powers, spacing)
      if (!(stack.power > 0))
        throw new Refusal(
          `“powers” together have ${stack.power === 0 ? 'no power' : 'a negative power'}, so they bring nothing in front of them into focus. Use stronger positive lenses${powers.length > 1 ? ', or another spacing' : ''}.`,
          'powers',
        )
      if (!(stack.frontFocus > 0))
        throw new Refusal(
          '“spacing” sets these lenses so far apart that they bring nothing in front of them into focus. Reduce it.',
          'spacing',
        )
      return { power: stack.power, front_focus: stack.frontFocus, back_focus: stack.backFocus }
    },
    advise: (powers: readonly number[]) =>
      powers.some((power, i) => i > 0 && power < (powers[i - 1] as number))
        ? 'The strongest lens usually goes nearest the camera (common practice): these powers do not ascend towards it.'
        : undefined,
  },
  {
    name: 'closeup_magnification',
    subject: 'close-focus',
    about: 'Magnification with a close-up lens in front.',
    also: ['close-up lens', 'dioptre', 'diopter', 'supplementary lens', 'macro'],
    parameters: [
      FOCAL,
      POWER,
      LENS_MAGNIFICATION,
      length('separation', 'from the close-up lens to the front principal plane', { default: '0 mm' }),
    ],
    result: RATIO,
    formula: 'm = m₀ + f (1 + m₀) P − m₀ e P; at infinity focus m = f P',
    source: 'derived: the close-up lens images the original, magnified 1 + P (u − e), at u = f (1 + 1/m₀)',
    validity: 'A thin close-up lens. For a stack give its power and measure from its principal plane.',
    cautions: [NO_LIGHT_LOST],
    examples: [
      { formula: 'closeup_magnification(100 mm, 3 dpt)', gives: '0.3' },
      { formula: 'closeup_magnification(100 mm, 3 dpt, 0.1, 20 mm)', gives: '0.424' },
      { formula: 'closeup_magnification(100 mm, 0 dpt)', refuses: 'power' },
      { formula: 'closeup_magnification(100 mm, 3 dpt, 1, 300 mm)', refuses: 'in front of it' },
    ],
    compute: (focal: number, power: number, own: number, separation: number) => {
      if (own > 0 && separation >= focal * (1 + 1 / own))
        throw new Refusal(
          `“separation” puts the close-up lens beyond the ${inMillimetres(focal * (1 + 1 / own))} at which the lens is focused, so nothing in front of it can be in focus. Bring it nearer.`,
          'separation',
        )
      return own + (focal * (1 + own) - own * separation) * power
    },
  },
  {
    name: 'closeup_effective_aperture',
    subject: 'close-focus',
    about:
      'Working f-number with a close-up lens: that of the lens as set, since the close-up lens does not change it.',
    parameters: [APERTURE, LENS_MAGNIFICATION, PUPIL_RATIO],
    result: F_NUMBER,
    formula: 'Nₑ = N (1 + m₀/p)',
    source: 'derived: neither the exit pupil nor its distance to the sensor changes',
    validity: 'A close-up lens wide enough not to cut the beam.',
    cautions: [NO_LIGHT_LOST],
    examples: [
      { formula: 'closeup_effective_aperture(f/8)', gives: 'f/8' },
      { formula: 'closeup_effective_aperture(f/8, 0.25)', gives: 'f/10' },
      { formula: 'closeup_effective_aperture(0, 0.25)', refuses: 'aperture' },
    ],
    compute: (aperture: number, own: number, pupilRatio: number) => aperture * (1 + own / pupilRatio),
  },
  {
    name: 'closeup_distance',
    subject: 'close-focus',
    about: 'Distance from the close-up lens to the original.',
    also: ['close-up lens', 'working distance', 'dioptre', 'diopter'],
    parameters: [
      POWER,
      positiveLength('focus_distance', 'what the main lens is focused on, measured from the close-up lens', {
        default: 'infinity',
      }),
    ],
    result: number(LENGTH),
    formula: '1/(P + 1/s)',
    source: 'derived: the close-up lens images the original at the distance s the main lens is focused on',
    validity: 'A thin close-up lens; for a stack at infinity focus use the front focus of closeup_stack.',
    cautions: [
      'The focus scale of a lens reads from the sensor: subtract the distance from the close-up lens to the sensor.',
    ],
    examples: [
      { formula: 'closeup_distance(2 dpt)', gives: '500 mm' },
      { formula: 'closeup_distance(2 dpt, 2 m)', gives: '400 mm' },
      { formula: 'closeup_distance(0 dpt)', refuses: 'power' },
    ],
    compute: (power: number, distance: number) => 1 / (power + 1 / distance),
  },
  {
    name: 'tube_choices',
    subject: 'close-focus',
    about: 'Every combination of the tubes available, and whether it reaches the required magnification.',
    also: ['bellows', 'extension tubes', 'extension rings'],
    parameters: [
      parameter('tubes', list(number(LENGTH)), 'lengths of the tubes available', { range: POSITIVE }),
      FOCAL,
      parameter('wanted', RATIO, 'required magnification', { range: POSITIVE }),
      parameter('least', RATIO, 'magnification of the lens alone at its farthest focus', {
        range: NOT_NEGATIVE,
        default: '0',
      }),
      parameter('greatest', RATIO, 'magnification of the lens alone at its closest focus', { range: NOT_NEGATIVE }),
    ],
    result: list(TUBE_CHOICE),
    formula: 'least + e/f to greatest + e/f for each sum e of tubes, none among them',
    source: 'derived: tube_magnification at both ends of the focusing range',
    validity: MOVES_AS_A_WHOLE,
    examples: [
      {
        formula: 'best_tubes(tube_choices({12 mm, 20 mm, 36 mm}, 50 mm, 1:2, greatest: 0.15)).extension',
        gives: '20 mm',
      },
      { formula: 'tube_choices({12 mm, 20 mm}, 50 mm, 1:2, 0.2, 0.15)', refuses: 'greatest' },
      {
        formula:
          'tube_choices({1 mm, 2 mm, 3 mm, 4 mm, 5 mm, 6 mm, 7 mm, 8 mm, 9 mm, 10 mm, 11 mm}, 50 mm, 1:2, 0, 0.15)',
        refuses: 'at most 10',
      },
    ],
    compute: (tubes: readonly number[], focal: number, required: number, least: number, greatest: number) =>
      tubeChoices(tubes, focal, required, least, greatest),
  },
  {
    name: 'best_tubes',
    subject: 'close-focus',
    about: 'The shortest of the combinations that reach the required magnification.',
    also: ['bellows', 'extension tubes', 'extension rings'],
    parameters: [parameter('choices', list(TUBE_CHOICE), 'from tube_choices')],
    result: TUBE_CHOICE,
    formula: 'first of the choices that cover',
    source: 'derived: least extension, then fewest tubes',
    validity: MOVES_AS_A_WHOLE,
    examples: [
      { formula: 'best_tubes(tube_choices({12 mm, 20 mm, 36 mm}, 50 mm, 1:1, 0, 0.15)).extension', gives: '48 mm' },
      { formula: 'best_tubes(tube_choices({12 mm, 20 mm}, 50 mm, 2, 0, 0.15))', refuses: 'None of “choices”' },
    ],
    compute: (choices: readonly TubeChoice[]) => {
      const best = choices.find((choice) => choice.covers)
      if (!best)
        throw new Refusal('None of “choices” reaches the magnification. Add a tube, or use a shorter lens.', 'choices')
      return best
    },
  },
]
