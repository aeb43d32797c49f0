import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { FrameError, type MarkedArea, readAreas } from '../frame/index.ts'
import type { Frame, Worksheet } from '../worksheet/index.ts'
import { writeTable } from '../worksheet/table/csv.ts'
import { isUnmarked, type MeasuredFile, measureAll } from './frame-pool.ts'
import { gradeFrames } from './frames-report.ts'
import { whyNoFolder } from './input.ts'
import { InputError } from './input-error.ts'
import { onlyOperand, readOptions } from './options.ts'
import { refuseOver, writeOut } from './output-file.ts'
import { readWorksheet } from './read-worksheet.ts'
import { printLines } from './report.ts'
import * as words from './words.ts'

const PICTURES = /\.(jpe?g|png|tiff?)$/i
const SLOWEST = 5

/**
 * `frames FOLDER --sheet SHEET.json --out report.csv`: every picture of a folder measured by the areas of the sheet’s
 * frame and graded by its checks. Exit 1 where one fails, waits or cannot be measured.
 */
export async function frames(args: readonly string[], program: string): Promise<number> {
  const { folder, sheet: sheetPath, out, name } = readFramesArguments(args)
  const worksheet = await readWorksheet(sheetPath)
  const cell = frameIn(worksheet, sheetPath, name)
  const areas = areasOf(cell, sheetPath)
  const paths = picturesIn(folder)
  refuseOver(out, [sheetPath, ...paths], 'report')
  const started = performance.now()
  const measured = await measureAll(paths, areas, program)
  const { rows, states } = gradeFrames(worksheet, cell, measured)
  writeOut(out, writeTable(rows))
  const seconds = (performance.now() - started) / 1000
  printLines(summary(measured, states, seconds, out))
  return states.some((state) => state !== 'pass' && state !== 'marginal') ? 1 : 0
}

function readFramesArguments(args: readonly string[]): {
  folder: string
  sheet: string
  out: string
  name: string | undefined
} {
  const { values, positionals } = readOptions('frames', args, {
    sheet: { type: 'string' },
    out: { type: 'string' },
    frame: { type: 'string' },
  })
  const folder = onlyOperand('frames', positionals)
  if (values.sheet === undefined) throw new InputError(words.optionMissing('frames', words.framesTakes.sheet))
  if (values.out === undefined) throw new InputError(words.optionMissing('frames', words.framesTakes.out))
  return { folder, sheet: values.sheet, out: values.out, name: values.frame }
}

function frameIn({ cells }: Worksheet, path: string, name: string | undefined): Frame {
  const all = cells.filter((cell): cell is Frame => cell.kind === 'frame')
  const found =
    name === undefined ? all.find(({ areas }) => areas && areas.length > 0) : all.find((cell) => cell.name === name)
  if (found) return found
  if (name !== undefined) throw new InputError(words.noFrameNamed(name, path))
  throw new InputError(words.inFile(path, all.length === 0 ? words.noFrame : words.noAreas))
}

/** The areas as marked, passed by what reads them; the one card of a sheet may be without corners, which are found. */
function areasOf({ areas = [], name }: Frame, path: string): readonly MarkedArea[] {
  const cards = areas.filter(({ kind }) => kind === 'square').length
  try {
    readAreas(cards === 1 ? areas.filter((area) => !isUnmarked(area)) : areas)
    return areas
  } catch (error) {
    if (error instanceof FrameError) throw new InputError(words.inFile(path, words.inFrame(name, error.message)))
    throw error
  }
}

function picturesIn(folder: string): string[] {
  let names: string[]
  try {
    if (!statSync(folder).isDirectory()) throw new InputError(words.inFile(folder, words.notAFolder))
    names = readdirSync(folder)
  } catch (error) {
    if (error instanceof InputError) throw error
    throw new InputError(words.inFile(folder, whyNoFolder(error)))
  }
  const paths = names
    .filter((name) => PICTURES.test(name) && !name.startsWith('.'))
    .sort()
    .map((name) => join(folder, name))
  if (paths.length === 0) throw new InputError(words.inFile(folder, words.noPictures))
  return paths
}

function summary(measured: readonly MeasuredFile[], states: readonly string[], seconds: number, out: string): string[] {
  const counts = ['pass', 'marginal', 'fail', 'waiting', 'unreadable'].flatMap((state) => {
    const count = states.filter((one) => one === state).length
    return count > 0 ? [`${count} ${state}`] : []
  })
  const slowest = [...measured].sort((one, other) => other.seconds - one.seconds).slice(0, SLOWEST)
  return [
    words.measuredFrames(measured.length, seconds.toFixed(1), counts.join(', ')),
    ...slowest.map(
      ({ name, seconds: own }, i) =>
        `${i === 0 ? words.slowest : ' '.repeat(words.slowest.length)} ${name}, ${own.toFixed(2)} s`,
    ),
    ...measured
      .flatMap(({ name, error }) => (error === undefined ? [] : [words.notMeasured(name, error)]))
      .slice(0, 20),
    words.written(out),
  ]
}
