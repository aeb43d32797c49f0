import { Refusal } from '../../language/index.ts'

const MOST_TUBES = 10

/** One way of combining the tubes available; lengths in metres. */
export type TubeChoice = Readonly<{
  tubes: readonly number[]
  extension: number
  /** Magnifications from the farthest to the closest focus of the lens. */
  least: number
  greatest: number
  covers: boolean
}>

/**
 * Every combination of tubes, none included: first those whose range includes the required magnification, by extension and
 * then by count; after them the others, by how far they miss.
 */
export function tubeChoices(
  tubes: readonly number[],
  focal: number,
  required: number,
  least: number,
  greatest: number,
): readonly TubeChoice[] {
  if (greatest < least)
    throw new Refusal('“greatest” is below “least”. Swap the two magnifications of the lens alone.', 'greatest')
  if (tubes.length > MOST_TUBES)
    throw new Refusal(
      `“tubes” has ${tubes.length}, and at most ${MOST_TUBES} can be combined. Leave some out.`,
      'tubes',
    )
  // A lens that reaches the magnification exactly must not fail by rounding.
  const slack = 1e-9 * required
  const misses = (choice: TubeChoice): number => Math.max(choice.least - required, required - choice.greatest, 0)
  // Lengths are compared to the nanometre, so that 12 + 20 mm is the same extension as 32 mm.
  const nanometres = (metres: number): number => Math.round(metres * 1e9)
  return combinations(tubes)
    .map((used): TubeChoice => {
      const extension = used.reduce((sum, tube) => sum + tube, 0)
      const ends = { least: least + extension / focal, greatest: greatest + extension / focal }
      const covers = ends.least <= required + slack && ends.greatest >= required - slack
      return { tubes: used, extension, ...ends, covers }
    })
    .sort(
      (a, b) =>
        Number(b.covers) - Number(a.covers) ||
        (a.covers ? 0 : Math.sign(Math.round((misses(a) - misses(b)) / slack))) ||
        nanometres(a.extension) - nanometres(b.extension) ||
        a.tubes.length - b.tubes.length,
    )
}

/** Every distinct combination of the items, in their order; two equal items do not make two combinations. */
function combinations(items: readonly number[]): readonly (readonly number[])[] {
  const found = new Map<string, readonly number[]>()
  for (let chosen = 0; chosen < 2 ** items.length; chosen++) {
    const combination = items.filter((_, i) => chosen & (1 << i))
    found.set([...combination].sort((a, b) => a - b).join(' '), combination)
  }
  return [...found.values()]
}
