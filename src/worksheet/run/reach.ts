import { stackOf } from '../../functions/camera/lens-stack.ts'
import { tubeChoices } from '../../functions/camera/tube-choices.ts'
import { Refusal } from '../../language/index.ts'
import { tooManyCloseups } from './words.ts'

/** The lens on the camera, and what there is to bring it closer; lengths in m, powers in 1/m. */
export interface AvailableLens {
  readonly focal: number
  /** The greatest magnification it focuses to by itself; without it, it is taken to reach every one. */
  readonly greatest?: number | undefined
  readonly gap: number
  readonly tubes: readonly number[]
  readonly closeups: readonly number[]
  /** From one close-up lens to the next. */
  readonly spacing: number
  /** From the last close-up lens to the front principal plane. */
  readonly separation: number
}

/** A way of getting as close as a magnification asks. */
export interface Means {
  readonly kind: 'lens' | 'tubes' | 'close-up'
  /** Lengths of the tubes, or powers of the close-up lenses, the first at the front. */
  readonly pieces: readonly number[]
  readonly least: number
  readonly most: number
  /** From original to sensor, in m, at a magnification within its reach. */
  readonly track: (magnification: number) => number
}

export interface Range {
  readonly least: number
  readonly most: number
}

const MOST_CLOSEUPS = 8
/** Two magnifications this near, in parts of their size, are one. */
const ROUNDING = 1e-9

const isIn = (m: number, { least, most }: Range): boolean => m >= least * (1 - ROUNDING) && m <= most * (1 + ROUNDING)

/** T = f (2 + m + 1/m) + gap, for a lens that moves as a whole, on tubes or not. */
const trackOf =
  (focal: number, gap: number) =>
  (m: number): number =>
    focal * (2 + m + 1 / m) + gap

/** In the order they are preferred: the lens alone, tubes by extension and then by count (they add no glass), close-up lenses by power. */
function meansOf(lens: AvailableLens): Means[] {
  const { focal, gap, tubes, greatest } = lens
  const track = trackOf(focal, gap)
  if (greatest === undefined) return [{ kind: 'lens', pieces: [], least: 0, most: Number.POSITIVE_INFINITY, track }]
  const onTubes = tubeChoices(tubes, focal, greatest, 0, greatest)
    .map(({ tubes: pieces, extension, ...ends }) => ({ pieces, extension, ...ends }))
    .sort((a, b) => Math.round((a.extension - b.extension) * 1e9) || a.pieces.length - b.pieces.length)
    .map(
      ({ pieces, least, greatest: most }): Means => ({
        kind: pieces.length === 0 ? 'lens' : 'tubes',
        pieces,
        least,
        most,
        track,
      }),
    )
  return [...onTubes, ...closeupsOf(lens, greatest)]
}

function closeupsOf(lens: AvailableLens, greatest: number): Means[] {
  if (lens.closeups.length > MOST_CLOSEUPS)
    throw new Refusal(tooManyCloseups(lens.closeups.length, MOST_CLOSEUPS), 'closeups')
  const ascending = [...lens.closeups].sort((a, b) => a - b)
  const stacks = new Map<string, readonly number[]>()
  for (let chosen = 1; chosen < 2 ** ascending.length; chosen++) {
    const powers = ascending.filter((_, i) => chosen & (1 << i))
    stacks.set(powers.join(' '), powers)
  }
  return [...stacks.values()]
    .map((powers) => ({ powers, power: stackOf(powers, lens.spacing).power }))
    .filter(({ power }) => power > 0)
    .sort((a, b) => a.power - b.power || a.powers.length - b.powers.length)
    .map(({ powers }) => closeupMeans(powers, lens, greatest))
}

/**
 * The lens behind a stack: m = m0 + f (1 + m0) P − m0 e P, as closeup_magnification has it, with e to the stack’s rear
 * principal plane, (1 − A)/P in front of its last lens. The stack as a thick one
 * (A B; C D) brings the lens's own focus at s to x = (s D − B)/(A + s P) in front of its first lens.
 */
function closeupMeans(powers: readonly number[], lens: AvailableLens, greatest: number): Means {
  const { focal, gap, spacing, separation } = lens
  const { power, frontFocus, backFocus } = stackOf(powers, spacing)
  const a = power * backFocus
  const d = power * frontFocus
  const b = (1 - a * d) / power
  const perOwn = a + focal * power - separation * power
  const magnification = (own: number): number => focal * power + own * perOwn
  const thickness = spacing * (powers.length - 1)
  const track = (m: number): number => {
    const own = Math.max(0, (m - focal * power) / perOwn)
    // The lens's own focus, from the last close-up lens; at infinity the original lies at the front focus.
    const inFront = own === 0 ? frontFocus : frontOf(focal * (1 + 1 / own) - separation)
    return inFront + thickness + separation + gap + focal * (1 + own)
  }
  const frontOf = (s: number): number => (s * d - b) / (a + s * power)
  return { kind: 'close-up', pieces: powers, least: magnification(0), most: magnification(greatest), track }
}

/** All magnifications within reach, and by what means each. */
export class Reach {
  private readonly means: readonly Means[]
  /** In ascending order, apart from each other. */
  readonly ranges: readonly Range[]

  /** Without a lens every magnification is taken to be within reach. Throws Refusal. */
  constructor(lens: AvailableLens | undefined) {
    this.means = lens ? meansOf(lens) : []
    this.ranges = lens ? joined(this.means) : [{ least: 0, most: Number.POSITIVE_INFINITY }]
  }

  /** The least magnification within reach that is not under this one. */
  up(m: number): number | undefined {
    for (const { least, most } of this.ranges) if (m <= most * (1 + ROUNDING)) return Math.min(Math.max(m, least), most)
    return undefined
  }

  /** The greatest one that is not over this one. */
  down(m: number): number | undefined {
    const range = this.ranges.findLast(({ least }) => m >= least * (1 - ROUNDING))
    return range && Math.max(range.least, Math.min(m, range.most))
  }

  /** What is preferred of what gives this magnification. */
  meansFor(m: number): Means | undefined {
    return this.means.find((one) => isIn(m, one))
  }

  get greatest(): number {
    return this.ranges.at(-1)?.most ?? 0
  }
}

function joined(means: readonly Range[]): Range[] {
  const ranges: { least: number; most: number }[] = []
  for (const { least, most } of [...means].sort((a, b) => a.least - b.least)) {
    const last = ranges.at(-1)
    if (last && least <= last.most * (1 + ROUNDING)) last.most = Math.max(last.most, most)
    else ranges.push({ least, most })
  }
  return ranges
}

/** The magnifications, up to life size, between which original and sensor are neither too far apart nor too near. */
export function withinTrack(
  lens: AvailableLens,
  least: number | undefined,
  most: number | undefined,
): Range | undefined {
  const at = (track: number): number | undefined => {
    const s = (track - lens.gap) / lens.focal - 2
    return s < 2 ? undefined : 2 / (s + Math.sqrt(s * s - 4))
  }
  const smallest = most === undefined ? 0 : at(most)
  if (smallest === undefined) return undefined
  const largest = least === undefined ? undefined : at(least)
  return { least: smallest, most: largest ?? Number.POSITIVE_INFINITY }
}
