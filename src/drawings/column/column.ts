import { listText } from '../../units/plural.ts'
import { Canvas } from '../canvas/canvas.ts'
import { type Dimension, drawDimension, figures, LANE, letterDimension } from '../canvas/dimension-line.ts'
import type { Draw, DrawingInputs } from '../canvas/drawing-options.ts'
import { type LengthUnit, lengthIn, lengthUnit, METRES } from '../canvas/drawing-unit.ts'
import { type Box, corners, distance, point } from '../canvas/geometry.ts'
import { ASCENT, textWidth } from '../canvas/lettering.ts'
import type { Metres, Pixels } from '../canvas/measures.ts'
import { nothingDrawn } from '../canvas/nothing-drawn.ts'
import { numberReader } from '../canvas/number-inputs.ts'
import { fitScale, type Scale } from '../canvas/scale.ts'
import { capital, figureText } from '../canvas/text-figures.ts'
import { TITLES } from '../canvas/words.ts'
import { roundTicks } from '../plots/ticks.ts'
import { drawCamera } from '../set-up/camera-outline.ts'
import { cameraDistances, type Show } from '../set-up/describe-set-up.ts'
import { readSetUp, type SetUp, type SetUpInputs } from '../set-up/set-up-inputs.ts'
import { type Upright, uprightDimensions } from '../set-up/upright-dimensions.ts'
import { SET_UP_WORDS } from '../set-up/words.ts'
import { COLUMN_WORDS as WORDS } from './words.ts'

const PAD = 4
const NARROWEST = 240
const BOARD_DEPTH = 6
/** Space above the column for the label of its reach, in pixels. */
const HEAD_ROOM = 24
/** Height of the drawing as a fraction of its width, and its limits in pixels. */
const SHAPE = { share: 0.72, least: 230, most: 420 }
/** Half the width of the column's scale in pixels. */
const COLUMN_HALF = 6
const FARTHEST: Metres = 100
/** The tick labels and the dimension of what is to spare, right of the column, in pixels. */
const LABEL_GAP = 5

/** The inputs whose dimensions can be emphasized. */
const EMPHASIS: Readonly<Record<string, string>> = {
  original_to_sensor: 'dimension-sensor',
  column_height: 'dimension-column',
  lens_to_original: 'dimension-lens',
  clear_distance: 'dimension-clear',
}

/** What the drawing shows; all heights are above the board unless a name says otherwise. */
interface Column {
  readonly setUp: SetUp
  readonly mark: Metres | undefined
  readonly reach: Metres | undefined
  readonly boardHalf: Metres
  readonly top: Metres
  readonly dimensions: readonly Upright[]
}

interface View {
  readonly scale: Scale
  readonly axis: Pixels
  readonly boardTop: Pixels
  readonly columnX: Pixels
  readonly height: Pixels
  readonly ticks: readonly number[]
}

/** Draws the camera on its column to scale, with the heights to set and a scale of heights above the board. */
export const drawColumn: Draw = (inputs, options) => {
  const width = Math.max(NARROWEST, Number.isFinite(options.width) ? options.width : 0)
  const title = options.title ?? TITLES.column
  const unit = lengthUnit(options.unit)
  const show = lengthIn(unit)
  // This drawing has no plan, so heights in the plan are not missed.
  const heights: DrawingInputs = { original_height: inputs.original_width, field_height: inputs.field_width }
  const { lamps: _lamps, mirror_zone: _mirror, ...own } = inputs
  const read = readSetUp({ ...own, ...heights } as SetUpInputs, show)
  const omissions = [...read.omissions]
  const reach = numberReader(omissions, show).positive(inputs.column_reach, WORDS.reach, FARTHEST)
  const setUp: SetUp = { ...read, lamps: [], mirror: undefined, omissions }
  if (setUp.column === undefined && setUp.sensor === undefined)
    return nothingDrawn(width, title, omissions, WORDS.heightUnknown)

  const column = columnOf(setUp, reach)
  const view = layOut(column, width, unit, options.zoom ?? 1)
  const canvas = new Canvas(width)
  const whole: Box = { left: 0, right: width, top: 0, bottom: view.height }
  const px = (metres: Metres): Pixels => metres * view.scale.pxPerMetre
  const aboveBoard = (metres: Metres): Pixels => view.boardTop - px(metres)
  const aboveOriginal = (metres: Metres): Pixels => aboveBoard(metres + setUp.thickness)

  drawBoard()
  const camera = drawCamera(canvas, setUp, {
    x: view.axis,
    y: aboveOriginal,
    pxPerMetre: view.scale.pxPerMetre,
  })
  drawRays()
  drawScale()
  drawPointer()
  const dimensions = [...drawHeights(), ...drawSpare()]
  drawDatum()
  const roomy = dimensions.filter(({ wordings }) => wordings.length > 2)
  // Either all wordings are long or all are short: a mixture would suggest different meanings.
  const long = roomy.every(({ from, to, wordings }) => textWidth(wordings[0] as string) < distance(from, to) - 10)
  for (const one of dimensions)
    letterDimension(
      canvas,
      { ...one, wordings: !long && one.wordings.length > 2 ? one.wordings.slice(1) : one.wordings },
      whole,
    )
  letterReach()
  letterTicks()

  function drawBoard(): void {
    const left = view.axis - px(column.boardHalf)
    const right = view.columnX + COLUMN_HALF + 2
    canvas.body('thick', 'board', corners({ left, right, top: view.boardTop, bottom: view.boardTop + BOARD_DEPTH }))
    if (setUp.originalWidth === undefined) return
    const half = px(setUp.originalWidth) / 2
    const top = Math.min(aboveBoard(setUp.thickness), view.boardTop - 2.5)
    const box = { left: view.axis - half, right: view.axis + half, top, bottom: view.boardTop }
    canvas.body('thick', 'original', corners(box), { filled: px(setUp.thickness) < 2.5 })
  }

  function drawRays(): void {
    const { fieldWidth, apex } = setUp
    if (fieldWidth === undefined || apex === undefined) return
    const from = point(view.axis, aboveOriginal(apex))
    canvas.lines('dashed', 'field-rays', [
      { from, to: point(view.axis - px(fieldWidth / 2), aboveOriginal(0)) },
      { from, to: point(view.axis + px(fieldWidth / 2), aboveOriginal(0)) },
    ])
  }

  function drawScale(): void {
    const [left, right] = [view.columnX - COLUMN_HALF, view.columnX + COLUMN_HALF]
    const top = aboveBoard(reach ?? column.top)
    canvas.lines('thin', 'column', [
      { from: point(left, view.boardTop), to: point(left, top) },
      { from: point(right, view.boardTop), to: point(right, top) },
      { from: point(left, top), to: point(right, top) },
    ])
    const step = (view.ticks[1] ?? 1) - (view.ticks[0] ?? 0)
    const parts = [5, 4, 2].find((count) => px((step / count) * METRES[unit]) >= 4) ?? 1
    const count = Math.floor(((reach ?? column.top) / METRES[unit] / step) * parts + 1e-9)
    canvas.lines(
      'dimension',
      'scale-tick',
      Array.from({ length: Math.min(400, count + 1) }, (_, at) => {
        const y = aboveBoard(((at * step) / parts) * METRES[unit])
        return { from: point(at % parts === 0 ? left : right - 5, y), to: point(right, y) }
      }),
    )
  }

  /** The carriage: a line from the camera to the pointer on the scale. */
  function drawPointer(): void {
    const { mark } = column
    if (mark === undefined) return
    const y = aboveBoard(mark)
    const tip = view.columnX - COLUMN_HALF
    const from = view.axis + camera.half(mark - setUp.thickness)
    const cameraY = setUp.sensor === undefined ? y : aboveOriginal(setUp.sensor)
    if (from < tip - 12) {
      const knee = tip - 12
      canvas.lines('thick', 'carriage', [
        { from: point(from, cameraY), to: point(knee, cameraY) },
        ...(Math.abs(cameraY - y) > 1 ? [{ from: point(knee, cameraY), to: point(knee, y) }] : []),
        { from: point(knee, y), to: point(tip - 8, y) },
      ])
    }
    canvas.body('thin', 'pointer', [point(tip, y), point(tip - 8, y - 4.5), point(tip - 8, y + 4.5)], { filled: true })
    // Above the end of the column the mark has no scale to point at.
    if (reach !== undefined && mark > reach)
      canvas.line('dotted', 'beyond-reach', point(view.columnX, aboveBoard(reach)), point(view.columnX, y - 4))
  }

  function drawHeights(): readonly Dimension[] {
    const emphasized = emphasizedClass(options.emphasis, column.dimensions)
    const all = column.dimensions.map((upright, index): Dimension => {
      const shown = show(upright.to - upright.from)
      return {
        className: upright.className,
        direction: 'upright',
        from: point(view.axis - px(column.boardHalf), aboveOriginal(upright.from)),
        to: point(view.axis - camera.half(upright.to), aboveOriginal(upright.to)),
        at: PAD + 14 + (column.dimensions.length - 1 - index) * LANE,
        wordings: [`${upright.long} ${shown}`, `${upright.short} ${shown}`, ...figures(shown)],
        extensions: [upright.from !== 0, true],
        emphasized: upright.className === emphasized,
      }
    })
    for (const one of all) drawDimension(canvas, one)
    return all
  }

  function drawSpare(): readonly Dimension[] {
    const { mark } = column
    if (mark === undefined || reach === undefined || px(Math.abs(reach - mark)) < 3) return []
    const x = view.columnX + COLUMN_HALF
    const shown = show(Math.abs(reach - mark))
    const dimension: Dimension = {
      className: 'dimension-spare',
      direction: 'upright',
      from: point(x, aboveBoard(mark)),
      to: point(x, aboveBoard(reach)),
      at: width - PAD - 5,
      wordings: reach >= mark ? WORDS.toSpare(shown) : WORDS.tooShort(shown),
    }
    drawDimension(canvas, dimension)
    return [dimension]
  }

  /** The level of the original's face, from which most heights are measured. */
  function drawDatum(): void {
    const outermost = Math.min(...column.dimensions.map((_, at) => PAD + 8 + at * LANE))
    if (column.dimensions.length === 0) return
    const y = aboveOriginal(0)
    canvas.lines('dimension', 'datum', canvas.around({ from: point(outermost, y), to: point(view.axis, y) }))
  }

  function letterReach(): void {
    if (reach === undefined) return
    const y = aboveBoard(Math.max(reach, column.mark ?? 0)) - 6
    const places = WORDS.reaches(show(reach)).flatMap((text) => [
      { lettering: { text, at: point(view.columnX + COLUMN_HALF, y), anchor: 'end' as const } },
      {
        lettering: {
          text,
          at: point(view.columnX - COLUMN_HALF - 4, aboveBoard(reach) + ASCENT),
          anchor: 'end' as const,
        },
      },
      { lettering: { text, at: point(view.columnX + COLUMN_HALF, y - 8), anchor: 'end' as const } },
    ])
    canvas.placeText('reach', places, whole)
  }

  function letterTicks(): void {
    for (const tick of view.ticks.filter((one) => one > 0)) {
      const y = aboveBoard(tick * METRES[unit]) + ASCENT / 2 - 1
      const at = point(view.columnX + COLUMN_HALF + LABEL_GAP, y)
      canvas.placeText('tick', [{ lettering: { text: figureText(tick), at, anchor: 'start' } }], whole)
    }
  }

  const description = describe(column, show, view.scale.name)
  return {
    node: canvas.node(view.height, title, description),
    title,
    description,
    omissions,
    width,
    height: view.height,
  }
}

function columnOf(setUp: SetUp, reach: Metres | undefined): Column {
  const mark = setUp.column ?? (setUp.sensor === undefined ? undefined : setUp.sensor + setUp.thickness)
  const tallest = Math.max(reach ?? 0, mark ?? 0, (setUp.sensor ?? 0) + setUp.thickness)
  const widest = Math.max(setUp.originalWidth ?? 0, setUp.fieldWidth ?? 0)
  const { left, right } = uprightDimensions(setUp, true)
  return {
    setUp,
    mark,
    reach,
    // The size of the board is not an input; it is drawn somewhat larger than what lies on it.
    boardHalf: Math.max(0.6 * widest, 0.2 * tallest, 0.05),
    top: tallest * 1.02,
    dimensions: [...left, ...right].sort((a, b) => a.to - b.to),
  }
}

function layOut(
  { dimensions, boardHalf, top, reach, mark }: Column,
  width: Pixels,
  unit: LengthUnit,
  zoom: number,
): View {
  const space = Math.min(SHAPE.most, Math.max(SHAPE.least, width * SHAPE.share))
  const inUnit = top / METRES[unit]
  const labels = Math.max(...roundTicks(0, inUnit, space / 30).map((one) => textWidth(figureText(one))), 0)
  const leftRoom = PAD + 14 + dimensions.length * LANE
  const spare = reach !== undefined && mark !== undefined ? LANE : 0
  const rightRoom = 2 * COLUMN_HALF + LABEL_GAP + labels + 6 + spare + PAD
  const scale = fitScale(
    { width: 2 * boardHalf, height: top },
    { width: width - leftRoom - rightRoom, height: space },
    zoom,
  )
  const px = (metres: Metres): Pixels => metres * scale.pxPerMetre
  const free = Math.max(0, width - leftRoom - rightRoom - px(2 * boardHalf))
  const axis = leftRoom + free / 2 + px(boardHalf)
  const boardTop = PAD + HEAD_ROOM + px(top)
  return {
    scale,
    axis,
    boardTop,
    columnX: Math.min(axis + px(boardHalf) + free / 2, width - rightRoom) + COLUMN_HALF,
    height: boardTop + BOARD_DEPTH + PAD + 4,
    ticks: roundTicks(0, inUnit, px(top) / 30),
  }
}

/** The class of the emphasized dimension; one dimension may give the height of sensor and mark. */
function emphasizedClass(input: string | undefined, dimensions: readonly Upright[]): string | undefined {
  const name = input === undefined ? undefined : EMPHASIS[input]
  if (name === 'dimension-sensor' && !dimensions.some(({ className }) => className === name)) return 'dimension-column'
  return name
}

function describe({ setUp, mark, reach }: Column, show: Show, scale: string): string {
  const distances = cameraDistances(setUp, show)
  const reached =
    reach === undefined
      ? []
      : mark === undefined
        ? [WORDS.reachOnly(show(reach))]
        : reach >= mark
          ? [WORDS.reachAndSpare(show(reach), show(reach - mark))]
          : [WORDS.reachTooShort(show(reach), show(mark - reach))]
  return [
    WORDS.introduction(scale),
    ...(setUp.column === undefined ? [] : [SET_UP_WORDS.columnHeight(show(setUp.column))]),
    ...reached,
    ...(distances.length === 0 ? [] : [SET_UP_WORDS.heights(capital(listText(distances)), distances.length)]),
    WORDS.notToSize,
  ].join(' ')
}
