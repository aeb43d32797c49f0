import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { gzipSync } from 'node:zlib'

/** The scripts index.html names. */
const TAG = /<(?:script\b[^>]*\bsrc|link\b[^>]*\brel="modulepreload"[^>]*\bhref)="\.?\/?([^"]+)"/g

/** What is imported one after the other on the way to a sheet filled in, besides the functions it calls. */
const OPENING = ['src/app/sheet/opening.ts']

/** What follows by itself after a sheet is shown: hints, notes on drawings, why it is not saved, its checks in full, their count for the list of sheets, what hands a page over, the suggestions of its checks, lists as tables. */
const FOLLOWING = [
  'src/app/examples/example-bar.ts',
  'src/app/hints/hint-line.ts',
  'src/app/paper/ready-to-print.ts',
  'src/cells/picture/drawing-notes.ts',
  'src/app/sections/section-line.ts',
  'src/app/session/save-failed.ts',
  'src/cells/checks/check-cell.ts',
  'src/cells/cautions/section-cautions.ts',
  'src/app/summary/section-summary.ts',
  'src/app/session/count-checks.ts',
  'src/app/session/leaving.ts',
  'src/app/compose/join-offer.ts',
  'src/app/advice/advice-client.ts',
  'src/cells/details/suggestion-list.ts',
  'src/cells/details/records-table.ts',
  'src/cells/kit/kit-request.ts',
  'src/kit/studio.ts',
  'src/kit/generic.ts',
  'shared/kit.json',
]

/** Parser, checker, and what else reads formulas: no template asks for them before a formula is opened. */
const READING = ['src/language/compiling/full-compiler.ts', 'src/app/common/full-language.ts']

/** Where the cells that take the whole width are shown, by kind. */
const WIDE_CELLS = {
  steps: 'src/cells/steps/steps-cell.ts',
  table: 'src/cells/table/table-cell.ts',
  range: 'src/cells/range/range-cell.ts',
  variants: 'src/cells/variants/variants-cell.ts',
  run: 'src/cells/run/run-cell.ts',
  frame: 'src/cells/frame/frame-cell.ts',
  function: 'src/cells/function/function-cell.ts',
}

/** The kinds that every sheet has. */
const IN_COLUMNS = ['given', 'result', 'check', 'note', 'drawing']

function wideCell(kind) {
  if (!WIDE_CELLS[kind]) throw new Error(`${kind} is missing among the wide cells of scripts/first-load.mjs.`)
  return WIDE_CELLS[kind]
}

/** Where each kind of drawing is drawn. */
const DRAWINGS = {
  'set-up': 'src/drawings/set-up/set-up.ts',
  column: 'src/drawings/column/column.ts',
  evenness: 'src/drawings/evenness/evenness.ts',
  readings: 'src/drawings/readings/readings.ts',
  'depth-zone': 'src/drawings/depth-zone/depth-zone.ts',
  time: 'src/drawings/time/time.ts',
  depth: 'src/drawings/depth/depth.ts',
  tiles: 'src/drawings/tiles/tiles.ts',
  squareness: 'src/drawings/squareness/squareness.ts',
  ledger: 'src/drawings/ledger/ledger.ts',
  patches: 'src/drawings/patches/patches.ts',
  'measured-light': 'src/drawings/measured-light/measured-light.ts',
  'over-time': 'src/drawings/over-time/over-time.ts',
  'lens-shadow': 'src/drawings/lens-shadow/lens-shadow.ts',
}

/** Chunks and all they import statically. */
function closure(chunks, names) {
  const found = new Set()
  const add = (name) => {
    if (found.has(name)) return
    found.add(name)
    for (const needed of chunks.get(name)?.imports ?? []) add(needed)
  }
  for (const name of names) add(name)
  return [...found]
}

/** A circle of imports among the page's own scripts: one of them would run before what it uses is there. */
function circle(chunks, names) {
  const seen = new Set()
  const visit = (name, path) => {
    const at = path.indexOf(name)
    if (at >= 0) return path.slice(at)
    if (seen.has(name)) return undefined
    seen.add(name)
    for (const needed of chunks.get(name)?.imports ?? []) {
      const found = visit(needed, [...path, name])
      if (found) return found
    }
    return undefined
  }
  for (const name of names) {
    const found = visit(name, [])
    if (found) return found
  }
  return undefined
}

/** The composed sheet of each job, and the files of functions it calls, as vite/templates.ts writes them. */
function composedIn(output) {
  const modules = output.flatMap(({ moduleIds = [] }) => moduleIds)
  const functionFile = (name) => modules.find((id) => id.includes('/src/functions/') && id.endsWith(`/${name}.ts`))
  const files = output.filter(({ fileName }) => /^assets\/.*\.json$/.test(fileName))
  return (key) => {
    const file = files.find(({ fileName }) => fileName.replace(/^assets\/(.*)-\w+\.json$/, '$1') === key)
    const { worksheet, functions } = JSON.parse(file.source)
    return { template: worksheet, functions: functions.map((name) => functionFile(name)) }
  }
}

const has = ({ cells }, kind) => cells.some((cell) => cell.kind === kind)

/** The modules a template is opened with. */
const modulesFor = (template, functions) => [
  ...OPENING,
  ...functions,
  ...(has(template, 'table') ? ['src/worksheet/table/table-capability.ts'] : []),
  ...(has(template, 'frame') ? ['src/worksheet/frame/frame-readings.ts'] : []),
  ...drawn(template).slice(0, 1),
]

/** Cells that take the whole width, pieces of kit and handles are fetched where a sheet has such; its drawings when they come into view, or the page has rested. */
const modulesAfter = (template) => [
  ...FOLLOWING,
  ...drawn(template),
  ...(template.cells.some(({ kind, from }) => kind === 'drawing' && 'upright' in from)
    ? ['src/drawings/set-up/any-set-up.ts']
    : []),
  ...new Set(template.cells.filter(({ kind }) => !IN_COLUMNS.includes(kind)).map(({ kind }) => wideCell(kind))),
  ...(template.cells.some(({ entry }) => entry === 'kit')
    ? ['src/cells/kit/kit-field.ts', 'src/cells/kit/kit-choice.ts']
    : []),
  ...(template.cells.some(({ moves = [] }) => moves.length > 0) ? ['src/cells/lamps/lamp-handles.ts'] : []),
]

const drawn = ({ cells }) =>
  cells
    .filter(({ kind }) => kind === 'drawing')
    .map(({ drawing }) => {
      if (!DRAWINGS[drawing]) throw new Error(`${drawing} is missing among the drawings of scripts/first-load.mjs.`)
      return DRAWINGS[drawing]
    })

/**
 * What the browser fetches for the page itself, and, by template, for the page and a sheet opened from it to be filled
 * in: the scripts' names. Under `later` what follows by itself: its drawings altogether, suggestions, handles, kit.
 */
export function firstLoad({ root, output, html }) {
  const chunks = new Map(output.filter(({ type }) => type === 'chunk').map((chunk) => [chunk.fileName, chunk]))
  const chunkOf = (module) => {
    const found = [...chunks.values()].find(({ moduleIds }) => moduleIds.includes(resolve(root, module)))
    if (!found) throw new Error(`No script of the built page holds ${module}.`)
    return found.fileName
  }
  const page = closure(
    chunks,
    [...html.matchAll(TAG)].map(([, name]) => name),
  )
  const around = circle(chunks, page)
  if (around) throw new Error(`These scripts of the page import each other in a circle: ${around.join(' → ')}.`)
  const composed = composedIn(output)
  const folder = join(root, 'templates')
  const sheets = readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .map((file) => {
      const key = file.replace(/\.json$/, '')
      const { template, functions } = composed(key)
      const names = closure(chunks, [...page, ...modulesFor(template, functions).map(chunkOf)])
      const later = closure(chunks, modulesAfter(template).map(chunkOf))
      const reads = READING.map(chunkOf).filter((name) => [...names, ...later].includes(name))
      if (reads.length > 0)
        throw new Error(`${key} brings ${reads.join(', ')}, which only a formula of the user's needs.`)
      return [key, { names, later }]
    })
  const part = (key) => Object.fromEntries(sheets.map(([name, one]) => [name, one[key]]))
  return { page, sheets: part('names'), later: part('later') }
}

export const gzipped = (path) => gzipSync(readFileSync(path), { level: 9 }).length
