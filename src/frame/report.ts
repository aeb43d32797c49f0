import type { Area } from './areas/area.ts'
import type { Taken } from './exif.ts'
import { type Frame, measureArea, type PixelFacts, type Reading } from './measure.ts'
import { FrameError } from './problem.ts'
import * as words from './words.ts'

interface FrameReport {
  readonly pixels: PixelFacts
  readonly taken: Taken | null
  /** By the names of the areas. */
  readonly areas: Readonly<Record<string, object>>
  readonly warnings?: readonly string[]
}

/** Measures what can be measured: the readings by the names of the areas, and of the others why not. */
export function measureEach(
  frame: Frame,
  areas: readonly Area[],
): { readings: Record<string, object>; refused: Record<string, string> } {
  const readings: [string, object][] = []
  const refused: [string, string][] = []
  for (const area of areas)
    try {
      readings.push([area.name, written(measureArea(frame, area), area.name)])
    } catch (error) {
      if (!(error instanceof FrameError)) throw error
      refused.push([area.name, error.message])
    }
  return { readings: Object.fromEntries(readings), refused: Object.fromEntries(refused) }
}

/** Measures all areas of a frame and gives the object that is written as JSON. Throws FrameError. */
export function frameReport(frame: Frame, areas: readonly Area[]): FrameReport {
  const { pixels, taken, warnings } = frame
  // Entries, not assignments: an area may be called __proto__.
  const readings = areas.map((area) => [area.name, written(measureArea(frame, area), area.name)] as const)
  return { pixels, taken, areas: Object.fromEntries(readings), ...(warnings.length > 0 ? { warnings } : {}) }
}

/** A reading without empty warnings. No figure that is none leaves here. */
function written(reading: Reading, name: string): object {
  if (!isFiniteThroughout(reading)) throw new FrameError(words.meaningless(name))
  if (!('warnings' in reading) || reading.warnings.length > 0) return reading
  const { warnings: _, ...figures } = reading
  return figures
}

function isFiniteThroughout(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value)
  return typeof value === 'object' && value !== null ? Object.values(value).every(isFiniteThroughout) : true
}
