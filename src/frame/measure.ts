import type { Area } from './areas/area.ts'
import { type ChartReading, measureChart } from './areas/chart.ts'
import { type EdgeReading, measureEdge } from './areas/edge.ts'
import { type EvennessReading, measureEvenness } from './areas/evenness.ts'
import { type LineReading, measureLine } from './areas/line.ts'
import { measurePatch, type PatchReading } from './areas/patch.ts'
import { measureRule, type RuleReading } from './areas/rule.ts'
import { measureSquare, type SquareReading } from './areas/square.ts'
import { chooseEncoding } from './colour/choose.ts'
import { type LitPicture, withLight } from './colour/light.ts'
import { decodePicture } from './decode/index.ts'
import { orient } from './decode/orient.ts'
import { readExif, type Taken } from './exif.ts'

export interface PixelFacts {
  readonly width: number
  readonly height: number
  readonly bits: 8 | 16
  readonly channels: 1 | 3
  readonly encoding: string
}

/** A picture ready to be measured, as it is shown. */
export interface Frame {
  readonly picture: LitPicture
  readonly pixels: PixelFacts
  readonly taken: Taken | null
  readonly warnings: readonly string[]
}

export type Reading =
  | PatchReading
  | EvennessReading
  | RuleReading
  | SquareReading
  | EdgeReading
  | ChartReading
  | LineReading

/** Decodes a file and finds out how its codes encode light. Throws FrameError. */
export function openFrame(file: Uint8Array): Frame {
  const decoded = decodePicture(file)
  const { taken, orientation, colourSpace } = readExif(decoded.exif)
  const { encoding, warnings } = chooseEncoding(decoded, colourSpace)
  const picture = orient(decoded.picture, orientation)
  const { width, height, bits, channels } = picture
  return {
    picture: withLight(picture, encoding),
    pixels: { width, height, bits, channels, encoding: encoding.name },
    taken,
    warnings: [...decoded.warnings, ...warnings],
  }
}

/** Measures one area. Throws FrameError. */
export function measureArea({ picture }: Frame, area: Area): Reading {
  switch (area.kind) {
    case 'patch':
      return measurePatch(area, picture)
    case 'evenness':
      return measureEvenness(area, picture)
    case 'rule':
      return measureRule(area, picture)
    case 'square':
      return measureSquare(area, picture)
    case 'edge':
      return measureEdge(area, picture)
    case 'chart':
      return measureChart(area, picture)
    case 'line':
      return measureLine(area, picture)
  }
}
