import type { Cell, Column, Run, TableCell } from '../../src/worksheet/index.ts'
import { seeded } from '../random.ts'
import { given } from './make.ts'

/** A collection of invented maps, and the sheet that plans how they are photographed. */

const PLACES = ['Alder', 'Brack', 'Cole', 'Dunmere', 'Esker', 'Fallow', 'Grane', 'Hythe']
const KINDS = ['town plan', 'coast', 'survey', 'estate', 'harbour', 'canal']

export const MAP_COLUMNS: readonly Column[] = [
  { name: 'title', label: 'Map', entry: 'text' },
  { name: 'width', label: 'Width', unit: 'mm' },
  { name: 'height', label: 'Height', unit: 'mm' },
  { name: 'surface', label: 'Surface', entry: 'choice', options: ['matt', 'glossy'] },
  { name: 'pages', label: 'Sides', may_be_empty: true },
  { name: 'done', label: 'Done', entry: 'tick' },
  { name: 'actual_time', label: 'Time taken', unit: 'min', may_be_empty: true },
]

export function mapRows(count: number): string[][] {
  const random = seeded(7)
  const between = (least: number, most: number): number => Math.round(least + (most - least) * random())
  return Array.from({ length: count }, (_, i) => {
    const place = PLACES[between(0, PLACES.length - 1)]
    const kind = KINDS[between(0, KINDS.length - 1)]
    const [width, height] = [between(180, 760), between(140, 560)]
    // A few as large as a wall.
    const times = i % 57 === 11 ? 2.6 : 1
    return [
      `${place} ${kind} ${i + 1}`,
      `${Math.round(width * times)}`,
      `${Math.round(height * times)}`,
      random() < 0.15 ? 'glossy' : 'matt',
      random() < 0.1 ? '2' : '',
      '',
      '',
    ]
  })
}

export const mapTable = (rows: readonly (readonly string[])[]): TableCell => ({
  kind: 'table',
  id: 'maps',
  name: 'maps',
  label: 'The maps',
  columns: MAP_COLUMNS.map((column) => ({ ...column })),
  rows: rows.map((row) => [...row]),
})

export const MAP_FROM: Run['from'] = {
  title: 'title',
  width: 'width',
  height: 'height',
  // Small ones are copied more finely.
  sampling: 'when(width * height < 0.1 [m^2], 2, 1) * wanted_sampling',
  exposure: 'surface',
  pages: 'pages',
  border: 'border',
  overlap: 'overlap',
  frame_time: 'frame_time',
  original_time: 'original_time',
  frame_data: 'frame_data(sensor_pixels.width, sensor_pixels.height, 3, 16)',
  done: 'done',
  actual_time: 'actual_time',
  sensor_width: 'sensor.width',
  sensor_height: 'sensor.height',
  pitch: 'sensor.width / sensor_pixels.width',
  focal: 'focal',
  lens_greatest: 'lens_greatest',
  tubes: 'tubes',
  sensor_to_carriage: 'sensor_to_carriage',
  column_greatest: 'column_greatest',
  setup_time: 'setup_time',
  spell: 'spell',
  break_time: 'break_time',
  day_time: 'day_time',
  copies: '2',
}

export const mapRun = (more: Partial<Run> = {}): Run => ({
  kind: 'run',
  id: 'run',
  title: 'The run',
  of: 'maps',
  from: { ...MAP_FROM },
  ...more,
})

/** The camera, the lens and how the work goes. */
export const MAP_GIVENS: readonly Cell[] = [
  given('wanted_sampling', '300', { unit: 'ppi', label: 'Required sampling' }),
  given('border', '5', { unit: 'mm', label: 'Border' }),
  given('overlap', '40', { unit: 'mm', label: 'Overlap' }),
  given('sensor', '43.8 x 32.9', { unit: 'mm', entry: 'size', label: 'Sensor' }),
  given('sensor_pixels', '11648 x 8736', { unit: 'px', entry: 'size', label: 'Pixels' }),
  given('focal', '80', { unit: 'mm', label: 'Focal length' }),
  given('lens_greatest', '1:6', { unit: '1:', label: 'Greatest magnification' }),
  given('tubes', '12, 20', { unit: 'mm', entry: 'list', label: 'Tubes' }),
  given('sensor_to_carriage', '40', { unit: 'mm', label: 'Sensor to carriage' }),
  given('column_greatest', '1.9', { unit: 'm', label: 'Highest on the column' }),
  given('frame_time', '35', { unit: 's', label: 'Time for each frame' }),
  given('original_time', '90', { unit: 's', label: 'Time for each map' }),
  given('setup_time', '25', { unit: 'min', label: 'Time for each set-up' }),
  given('spell', '90', { unit: 'min', label: 'Before a break' }),
  given('break_time', '15', { unit: 'min', label: 'Break' }),
  given('day_time', '6', { unit: 'h', label: 'Day at the stand' }),
]

export const mapCells = (rows: readonly (readonly string[])[]): Cell[] => [...MAP_GIVENS, mapTable(rows), mapRun()]
