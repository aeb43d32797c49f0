import { type Computable, showValue, type Value } from '../../language/index.ts'
import type { Sheet } from '../editing/sheet.ts'
import { VALUE } from '../engine/engine-view.ts'
import type { Node } from '../engine/node.ts'
import { upstreamOf } from '../engine/partial-recompute.ts'
import type { Cell, Check } from '../schema/document.ts'
import type { Variable } from './choices.ts'
import { decisionsFor, withChanges } from './decisions.ts'
import { gapOf } from './gap.ts'
import type { Fact, NoPlan, PlannedChange, Shortfall } from './plan.ts'

const MAX_LIMITS = 3

/** Why a failing check has no plan: what it judges, how near it gets, what limits it, and what would have to be otherwise. */
export function reasonForNone(
  sheet: Sheet,
  name: string,
  variables: readonly Variable[],
  { changes, isExhausted }: { readonly changes: readonly PlannedChange[]; readonly isExhausted: boolean },
): NoPlan {
  const { engine } = sheet
  const node = engine.named(name) as Node
  const upstream = upstreamOf(engine.layout, [engine.positionOf(node)]).map((at) => engine.layout.order[at] as Node)
  const isSet = ({ cell }: Node): boolean =>
    variables.some(({ level, givens }) => level !== 'agreement' && givens.some(({ id }) => id === cell.id))
  if (upstream.some(isReading) && !upstream.some(isSet))
    return {
      kind: 'readings',
      settings: settingsBehind(sheet, upstream, variables),
      short: shortfallOf(sheet, name),
      nearest: [],
      against: undefined,
      limits: limitsOf(sheet, node, upstream.filter(isReading)),
      decisions: decisionsFor(sheet, name, upstream, []),
    }
  const isVariable = ({ cell }: Node): boolean =>
    variables.some(({ givens }) => givens.some(({ id }) => id === cell.id))
  const isFixed = !upstream.some(isVariable)
  const trial = changes.length > 0 ? withChanges(sheet, changes) : sheet
  const limits = limitsOf(
    sheet,
    node,
    upstream.filter((one) => !isVariable(one)),
  )
  const against = againstOf(sheet, trial, name)
  return {
    kind: isFixed ? 'fixed' : isExhausted ? 'not found' : 'out of reach',
    settings: [],
    short: shortfallOf(trial, name),
    nearest: changes,
    against,
    againstShort: against === undefined ? undefined : shortfallOf(trial, against),
    limits: limits.length > 0 ? limits : limitsOf(sheet, node, upstream),
    decisions: decisionsFor(sheet, name, upstream, changes),
  }
}

/**
 * Whether a reason adds to the message of the check. Of what was answered or counted, such as the rights in an original or
 * the masters of a job, it could only say that nothing but another answer changes it.
 */
export function saysMore(sheet: Sheet, { kind, settings, short, limits, decisions }: NoPlan): boolean {
  const isUnchanged = kind === 'fixed' || (kind === 'readings' && settings.length === 0)
  if (!isUnchanged || short !== undefined || decisions.length > 0) return true
  return kind === 'fixed' && !limits.every(({ name }) => isAnswer(sheet.named(name)))
}

const isAnswer = (cell: Cell | undefined): boolean =>
  cell?.kind === 'given' && (cell.entry === 'choice' || cell.entry === 'yes or no')

/** A result that was measured, or a given that is a reading: changing a setting does not change what was read. */
const isReading = ({ cell, measured }: Node): boolean =>
  measured?.value !== undefined || (cell.kind === 'given' && cell.reading === true)

/**
 * What may be set freely and decides what was read: the settings behind the formula of what was measured, or behind
 * what a reading is taken under.
 */
function settingsBehind(sheet: Sheet, upstream: readonly Node[], variables: readonly Variable[]): string[] {
  const { engine } = sheet
  const behind = new Set<Node>()
  const open = upstream.filter(isReading)
  for (let node = open.pop(); node; node = open.pop()) {
    if (behind.has(node)) continue
    behind.add(node)
    open.push(...engine.needsOf(node))
    if (node.cell.kind === 'given')
      open.push(...(node.cell.read_under ?? []).flatMap((name) => engine.named(name) ?? []))
  }
  const ids = new Set([...behind].map(({ cell }) => cell.id))
  return variables
    .filter(({ level, givens }) => level === 'setting' && givens.some(({ id }) => ids.has(id)))
    .map(({ name }) => name)
}

/** By how much a failing check fails, as it is shown; undefined where what it fails by has no figure. */
function shortfallOf({ engine }: Sheet, name: string): Shortfall | undefined {
  const condition = engine.named(name)?.compiled?.condition
  if (!condition) return undefined
  const gap = gapOf(condition(), (cell) => engine.value(engine.named(cell) as Node) as Value)
  if (!gap) return undefined
  const { left, right, is, limit, off } = gap
  const { type } = left
  const unit = unitOf(engine, left) ?? unitOf(engine, right)
  const shown = (value: number): string => showValue(value, type, unit).text
  // A difference says nothing about marks, ratios and levels.
  const isPlain = type.kind === 'number' && !type.notation && !type.level && !unit?.notation && !unit?.offset
  return {
    is: shown(is),
    limit: shown(limit),
    ...(isPlain && off > 0 ? { off: shown(off) } : {}),
    isOver: is > limit,
  }
}

/** The unit that a side of a comparison is declared in: of a cell by itself its own. */
function unitOf(engine: Sheet['engine'], { inputs: [input], spans }: Computable): Node['unit'] {
  if (!input || !('cell' in input) || spans.length > 0) return undefined
  return engine.named(input.cell)?.unit
}

/** The check that passes now and fails with the nearest changes. */
function againstOf(sheet: Sheet, trial: Sheet, name: string): string | undefined {
  if (trial === sheet) return undefined
  return sheet.cells.find(
    (cell): cell is Check =>
      cell.kind === 'check' &&
      cell.name !== name &&
      ['pass', 'marginal'].includes(sheet.checkState(cell.id)) &&
      trial.checkState(cell.id) === 'fail',
  )?.name
}

/** What a check cannot get past: the given facts it depends on, those nearest to its condition first. */
function limitsOf({ engine }: Sheet, check: Node, among: readonly Node[]): Fact[] {
  const allowed = new Set(among)
  const found: Fact[] = []
  const seen = new Set<Node>([check])
  for (let front: readonly Node[] = [check]; front.length > 0 && found.length < MAX_LIMITS; ) {
    const next = front.flatMap((node) => engine.needsOf(node)).filter((node) => !seen.has(node) && seen.add(node))
    for (const node of next) {
      const isFact = node.cell.kind === 'given' || node.measured?.value !== undefined
      if (!isFact || !allowed.has(node) || found.length >= MAX_LIMITS) continue
      const { type } = node
      if (engine.state(node) !== VALUE || !type) continue
      // A list would be longer than the sentence.
      const is = type.kind === 'list' ? '' : showValue(engine.value(node) as Value, type, node.unit).text
      found.push({ name: node.cell.name, is })
    }
    front = next
  }
  return found
}
