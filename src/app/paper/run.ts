import { progressLines, totalLines } from '../../cells/run/run-tally.ts'
import { labelOf } from '../../cells/shared/cell-view.ts'
import { element, type Node } from '../../drawings/canvas/tree.ts'
import type { Run, Sheet } from '../../worksheet/index.ts'
import type { Planned, PlannedSetup, RunPlan } from '../../worksheet/run/plan.ts'
import { heightsText, meansText, ratioText, tilesText, timeText } from '../../worksheet/run/plan-text.ts'
import { runOf } from '../../worksheet/run/sheet-run.ts'
import { paperWords as words } from './words.ts'

/** The number of originals of a set-up that are named; longer lists are printed from the terminal's table. */
const MOST_NAMED = 400

const small = (text: string): Node => element('p', { class: 'small' }, text)
const cell = (text: string): Node => element('td', {}, text)

function namedOf(originals: readonly Planned[]): string {
  const names = originals.slice(0, MOST_NAMED).map(({ original, tiles }) => {
    const more = [tilesText(tiles), original.done ? words.done : ''].filter(Boolean).join(', ')
    return `${original.title}${more ? ` (${more})` : ''}`
  })
  const rest = originals.length - names.length
  return `${names.join('; ')}${rest > 0 ? `; ${words.more(rest)}` : ''}`
}

function setupRows(setup: PlannedSetup, at: number, width: number): Node {
  const { magnification, exposure, means, originals, frames, time } = setup
  const done = originals.filter(({ original }) => original.done).length
  return element(
    'tbody',
    {},
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, `${at + 1}`),
      element('td', {}, element('b', {}, ratioText(magnification))),
      element('td', {}, element('b', {}, heightsText(setup))),
      cell([exposure, meansText(means)].filter(Boolean).join(', ')),
      cell(words.originals(originals.length, done)),
      cell(`${frames}`),
      cell(time > 0 ? timeText(time) : ''),
    ),
    element('tr', {}, element('td', { colspan: width, class: 'named' }, namedOf(originals))),
  )
}

const figures = (lines: readonly (readonly [string, string, ...unknown[]])[]): Node =>
  element(
    'table',
    {},
    element(
      'tbody',
      {},
      ...lines.map(([label, figure]) =>
        element('tr', {}, element('th', { scope: 'row' }, label), element('td', { class: 'long' }, figure)),
      ),
    ),
  )

function planRows(plan: RunPlan): Node[] {
  const { setups, unplanned, total, progress } = plan
  const withTrack = setups.some(({ heights, track }) => !heights && track !== undefined)
  const heads = words.setupHeads(withTrack)
  return [
    element(
      'table',
      { class: 'setups' },
      element('thead', {}, element('tr', {}, ...heads.map((head) => element('th', { scope: 'col' }, head)))),
      ...setups.map((setup, at) => setupRows(setup, at, heads.length)),
    ),
    ...(unplanned.length > 0 ? [element('p', {}, element('b', {}, words.unplanned))] : []),
    ...unplanned.slice(0, MOST_NAMED).map(({ row, title, why }) => small(words.unplannedRow(title, row + 1, why))),
    figures(totalLines(total)),
    ...(progress.done.count > 0 ? [figures(progressLines(plan))] : []),
  ]
}

/** The plan of the run as a table by set-up, in the order of work. */
export function runOnPaper(sheet: Sheet, run: Run): Node {
  const { feed, plan } = runOf(sheet, run)
  const title = run.left ? words.remaining(labelOf(run)) : labelOf(run)
  return element(
    'div',
    { class: 'columns run' },
    element('p', {}, element('b', {}, title)),
    ...(plan
      ? [...feed.without.map(({ input, why }) => small(words.plannedWithout(input.label, why))), ...planRows(plan)]
      : [
          small(
            feed.table
              ? words.notPlanned(feed.missing.map(({ input, why }) => `${input.label}: ${why}`))
              : words.notPlanned([words.noTable]),
          ),
        ]),
  )
}
