import type { FramePicture } from '../../frame/index.ts'
import type { RasterPart } from '../../frame/raster.ts'
import type { FrameArea } from './area-shapes.ts'

/** What the page asks of the worker that has a picture. */
export type FrameTask =
  | {
      readonly do: 'open'
      readonly file: ArrayBuffer
      readonly areas: readonly FrameArea[]
      /** The digest of the picture the areas were marked on: in another one corners are looked for. */
      readonly marked: string | undefined
    }
  | { readonly do: 'measure'; readonly areas: readonly FrameArea[] }
  | { readonly do: 'find'; readonly area: FrameArea }
  | { readonly do: 'look'; readonly part: RasterPart }

export interface FrameRequest {
  readonly id: number
  readonly task: FrameTask
}

export interface Measured {
  readonly readings: Record<string, Record<string, unknown>>
  /** Why an area could not be measured, by its name. */
  readonly refused: Readonly<Record<string, string>>
}

export interface Opened extends Measured {
  readonly pixels: FramePicture['pixels']
  readonly taken: FramePicture['taken']
  readonly warnings: readonly string[]
  /** The areas, each with a place in the picture. */
  readonly areas: readonly FrameArea[]
  /** The names of those whose corners were found by themselves, and of those whose were not. */
  readonly found: readonly string[]
  readonly unfound: readonly string[]
  /** SHA-256 of the file, in hexadecimal; empty where the browser does not compute it. */
  readonly digest: string
}

export type FrameReply =
  | { readonly id: number; readonly opened: Opened }
  | { readonly id: number; readonly measured: Measured }
  /** The area with its corners; undefined where they were not safely found. */
  | { readonly id: number; readonly area: FrameArea | undefined }
  | { readonly id: number; readonly raster: Uint8ClampedArray<ArrayBuffer> }
  /** How far it is. */
  | { readonly id: number; readonly progress: 'decoded' }
  | { readonly id: number; readonly error: string }
