import {
  type Cell,
  type Drawing,
  type Given,
  isHeading,
  type Result,
  type Sheet,
  type Steps,
} from '../../worksheet/index.ts'

/** A figure that is set or read at the stand. */
export type StandFigureCell = Given | Result

/** One step of the order of work, over all lists of a sheet. */
export interface StandStep {
  /** Its number, counted from 1 over all lists. */
  readonly number: number
  readonly list: Steps
  /** Its place in its list. */
  readonly at: number
  readonly text: string
  readonly done: boolean
  /** The given that takes what is read, or the result that takes it as measured. */
  readonly reading: StandFigureCell | undefined
  /** The figures that are set at it, without its reading. */
  readonly sets: readonly StandFigureCell[]
  /** Whether frames are taken and counted at it. */
  readonly countsFrames: boolean
}

/** The figures that are set or read at a step. */
export const figuresOf = ({ reading, sets }: StandStep): readonly StandFigureCell[] =>
  reading ? [reading, ...sets] : sets

const isFigure = (cell: Cell | undefined): cell is StandFigureCell => cell?.kind === 'given' || cell?.kind === 'result'

/** The steps of a sheet in the order of the work, each with its readings, as shown at the stand. */
export function standSteps(sheet: Sheet): readonly StandStep[] {
  const lists = sheet.cells.filter((cell): cell is Steps => cell.kind === 'steps')
  const figure = (name: string | undefined): StandFigureCell | undefined => {
    const cell = name === undefined ? undefined : sheet.named(name)
    return isFigure(cell) ? cell : undefined
  }
  return lists
    .flatMap((list) => list.steps.map((step, at) => ({ list, step, at })))
    .map(({ list, step, at }, index) => {
      const reading = figure(step.reading)
      return {
        number: index + 1,
        list,
        at,
        text: step.text.trim(),
        done: step.done === true,
        reading,
        sets: (step.sets ?? []).flatMap((name) => figure(name) ?? []).filter((one) => one !== reading),
        countsFrames: step.phase === 'frames' && step.reading === undefined,
      }
    })
}

/** A figure of the overview, with the step it belongs to. */
export interface FigureInOrder {
  readonly cell: StandFigureCell
  readonly step: StandStep | undefined
  /** The text of its section's heading. */
  readonly section: string
}

/**
 * All figures marked for the stand and all readings in the order of work. A figure that no step names belongs to the
 * first step about another figure of its section, or comes last.
 */
export function figuresInOrder(sheet: Sheet, steps: readonly StandStep[]): readonly FigureInOrder[] {
  const sections = sectionTitles(sheet.cells)
  const section = (cell: StandFigureCell): string => sections.get(cell.id) ?? ''
  const named = new Map<StandFigureCell, StandStep>()
  for (const step of steps) for (const cell of figuresOf(step)) if (!named.has(cell)) named.set(cell, step)
  const ofSection = new Map<string, StandStep>()
  for (const [cell, step] of named) {
    const known = ofSection.get(section(cell))
    if (!known || step.number < known.number) ofSection.set(section(cell), step)
  }
  return sheet.cells
    .filter((cell): cell is StandFigureCell => isFigure(cell) && (cell.stand === true || named.has(cell)))
    .map((cell, at) => ({ cell, at, section: section(cell), step: named.get(cell) ?? ofSection.get(section(cell)) }))
    .sort((a, b) => (a.step?.number ?? steps.length + 1) - (b.step?.number ?? steps.length + 1) || a.at - b.at)
    .map(({ cell, step, section }) => ({ cell, step, section }))
}

function sectionTitles(cells: readonly Cell[]): ReadonlyMap<string, string> {
  const titles = new Map<string, string>()
  let title = ''
  for (const cell of cells) {
    if (isHeading(cell)) title = cell.text
    else titles.set(cell.id, title)
  }
  return titles
}

/** The drawing that shows the figures of a step, and the input whose dimension the step is about. */
export interface StepDrawing {
  readonly cell: Drawing
  readonly emphasis: string | undefined
}

/** The drawing fed most directly by one of a step's figures; for a step that counts frames, the one of the frames. */
export function drawingOf(sheet: Sheet, step: StandStep): StepDrawing | undefined {
  const drawings = sheet.cells.filter((cell): cell is Drawing => cell.kind === 'drawing')
  if (step.countsFrames) {
    const prefix =
      sheet.worksheet.setups?.map(({ name }) => `${name}_`).find((one) => step.list.id.startsWith(one)) ?? ''
    // The first set-up's drawing comes first; a later one's has its prefix.
    const tiles = drawings.find(({ drawing, id }) => drawing === 'tiles' && id.startsWith(prefix))
    if (tiles) return { cell: tiles, emphasis: undefined }
  }
  let best: (StepDrawing & { readonly weight: number }) | undefined
  // If two drawings show it, the one that shows less besides.
  const simplestFirst = drawings.toSorted((a, b) => Object.keys(a.from).length - Object.keys(b.from).length)
  for (const { name } of figuresOf(step))
    for (const cell of simplestFirst)
      for (const [input, formula] of Object.entries(cell.from)) {
        const weight =
          formula.trim() === name ? 3 : cell.moves?.includes(name) ? 2 : sheet.namesIn(formula).includes(name) ? 1 : 0
        if (weight > (best?.weight ?? 0)) best = { cell, emphasis: input, weight }
      }
  return best
}

/** The drawing of a step; for one without, that of the nearest step before it, then after it. */
export function drawingNear(sheet: Sheet, steps: readonly StandStep[], at: number): StepDrawing | undefined {
  const order = [...steps.slice(0, at + 1).reverse(), ...steps.slice(at + 1)]
  for (const step of order) {
    const found = drawingOf(sheet, step)
    if (found) return step === steps[at] ? found : { ...found, emphasis: undefined }
  }
  return undefined
}
