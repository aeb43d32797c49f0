import { anyOf, listText } from '../../units/plural.ts'
import { labelOf } from '../document/label.ts'
import { readGiven } from '../document/read-given.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Given } from '../schema/document.ts'
import { levelOf } from './choices.ts'
import type { NoPlan, Plan, PlannedChange, Shortfall } from './plan.ts'
import { adviceWords } from './words.ts'

/** A plan as one sentence with a verb for each change: `Raise both lamps to 1200 mm and set Aperture to f/8.` */
export const planText = (sheet: Sheet, { changes }: Plan): string => `${capital(changesText(sheet, changes))}.`

/** What a plan does beside: the value it gives, the checks it breaks and leaves marginal, and what is to be read again. */
export function consequenceText(sheet: Sheet, { gives, marginal, breaks, again }: Plan): string {
  const labels = (names: readonly string[]): string[] => names.map((name) => labelNamed(sheet, name))
  return [
    ...(gives === undefined ? [] : [adviceWords.gives(gives)]),
    ...(breaks.length > 0 ? [adviceWords.breaks(labels(breaks))] : []),
    ...(marginal.length > 0 ? [adviceWords.marginal(labels(marginal))] : []),
    ...(again.readings.length > 0 ? [adviceWords.readAgain(labels(again.readings), labels(again.checks))] : []),
  ].join(' ')
}

/** The plan for the whole sheet, with the checks it makes pass first. */
export const wholePlanText = (sheet: Sheet, plan: Plan): string =>
  `${adviceWords.wholeSheet(
    plan.passes.map((name) => labelNamed(sheet, name)),
    changesText(sheet, plan.changes),
  )}.`

/** Why there is no plan, how near the nearest comes, what limits it, and what would have to be otherwise. */
export function noPlanText(sheet: Sheet, none: NoPlan): string {
  const { kind, settings, short, nearest, against, againstShort, limits, decisions } = none
  const parts: string[] = []
  if (kind === 'readings') parts.push(adviceWords.readings(settings.map((name) => labelNamed(sheet, name))))
  else parts.push(REASONS[kind])
  if (short) parts.push(adviceWords.short(amountText(short), changesText(sheet, nearest)))
  else if (nearest.length > 0 && against !== undefined)
    parts.push(adviceWords.nearest(lower(changesText(sheet, nearest))))
  if (against !== undefined)
    parts.push(adviceWords.against(labelNamed(sheet, against), againstShort && amountText(againstShort)))
  const facts = limits.map(({ name, is }) => adviceWords.fact(labelNamed(sheet, name), is).trim())
  if (kind === 'readings' && facts.length > 0) parts.push(adviceWords.dependsOn(facts))
  if (decisions.length > 0) parts.push(decisionsText(sheet, decisions))
  else if (kind !== 'readings' && facts.length > 0) parts.push(adviceWords.limits(facts))
  return parts.join(' ')
}

const REASONS = {
  fixed: adviceWords.fixed,
  'out of reach': adviceWords.outOfReach,
  'not found': adviceWords.notFound,
} as const

const amountText = ({ is, limit, off, isOver }: Shortfall): string =>
  off === undefined
    ? adviceWords.isAgainst(is, limit)
    : isOver
      ? adviceWords.over(off, limit)
      : adviceWords.under(off, limit)

/** Equipment that would do first, then what might be agreed on. */
function decisionsText(sheet: Sheet, decisions: readonly PlannedChange[]): string {
  const [things, agreements]: [string[], string[]] = [[], []]
  for (const change of decisions) {
    const given = givenNamed(sheet, change.given)
    const figure = figureOf(sheet, change.given, change.text)
    const { otherwise } = given?.advice ?? {}
    if (otherwise !== undefined) things.push(otherwise.replace('{}', figure))
    else if (given && levelOf(given) === 'agreement') agreements.push(lower(changeText(sheet, change)))
    else things.push(adviceWords.fact(labelNamed(sheet, change.given), figure))
  }
  if (things.length === 0) return adviceWords.itWouldPassIf(anyOf(agreements))
  return agreements.length === 0 ? adviceWords.decisions(things) : adviceWords.decisionsOr(things, anyOf(agreements))
}

function changesText(sheet: Sheet, changes: readonly PlannedChange[]): string {
  const followers = new Set(
    changes.flatMap(({ given: name }) => {
      const given = givenNamed(sheet, name)
      return [...(given?.advice?.with ? [given.advice.with] : []), ...Object.values(given?.fills ?? {})]
    }),
  )
  const led = changes.filter(({ given }) => !followers.has(given))
  const setUps = [...new Set(led.map(({ given }) => setUpOf(sheet, given)))]
  return setUps
    .map((setUp, at) => {
      const texts = led
        .filter(({ given }) => setUpOf(sheet, given) === setUp)
        .map((change, i) =>
          at + i === 0 && setUp === undefined ? changeText(sheet, change) : lower(changeText(sheet, change)),
        )
      return setUp === undefined ? listText(texts) : adviceWords.inSetUp(setUp, listText(texts))
    })
    .join('; ')
}

/** The title of the later set-up that a name belongs to; undefined for the first, and for what all share. */
function setUpOf({ worksheet }: Sheet, name: string): string | undefined {
  const setUp = worksheet.setups?.find((one) => name.startsWith(`${one.name}_`))
  return setUp && (setUp.title ?? setUp.name)
}

function changeText(sheet: Sheet, { given: name, before, text }: PlannedChange): string {
  const given = givenNamed(sheet, name)
  const label = given ? labelOf(given) : name
  const [from, to] = [figureOf(sheet, name, before), figureOf(sheet, name, text)]
  if (!given) return adviceWords.set(label, to)
  const [now, next] = [before, text].map((one) => readGiven({ ...given, value: one }).value)
  const rises = typeof now === 'number' && typeof next === 'number' ? next > now : undefined
  const { more, less, to: chosen } = given.advice ?? {}
  const own = (rises ?? next) === true ? more : (rises ?? next) === false ? less : chosen
  if (own) return own.replace('{}', to)
  const level = levelOf(given)
  if (level === 'agreement') return adviceWords.agree(label, from, to)
  if (given.entry === 'kit') return adviceWords.choosePiece(label, text)
  if (level === 'kit') return adviceWords.otherKit(label, from, to)
  // For marks and ratios the larger figure is the smaller value: neither word would be clear.
  if (rises === undefined || /^(f\/|1:|1\/)/.test((given.unit ?? '').trim())) return adviceWords.set(label, to)
  return rises ? adviceWords.increase(label, from, to) : adviceWords.reduce(label, from, to)
}

/** A text as it is read, with its unit. */
function figureOf(sheet: Sheet, name: string, text: string): string {
  const given = givenNamed(sheet, name)
  return given ? (readGiven({ ...given, value: text }).readAs ?? text) : text
}

function givenNamed(sheet: Sheet, name: string): Given | undefined {
  const cell = sheet.named(name)
  return cell?.kind === 'given' ? cell : undefined
}

/** What a cell is called, by its name; in a later set-up with the set-up, as each has a cell of that label. */
export function labelNamed(sheet: Sheet, name: string): string {
  const cell = sheet.named(name)
  const label = cell && 'label' in cell ? labelOf({ name, label: cell.label as string | undefined }) : name
  const setUp = setUpOf(sheet, name)
  return setUp === undefined ? label : adviceWords.ofSetUp(label, setUp)
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
/** A sentence begun by a template goes on in the middle of another. */
const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)
