import type { DrawingKind } from '../worksheet/schema/drawing-kinds.ts'
import type { Draw } from './canvas/drawing-options.ts'

/** Fetches what draws a cell that is fed so. */
export type DrawingLoader = (fed: Readonly<Record<string, string>>) => Promise<Draw>

/** What draws each kind: a file of its own each, so that a sheet loads only what it shows. */
export const LOADERS: Readonly<Record<DrawingKind, DrawingLoader>> = {
  'set-up': async ({ upright }) =>
    upright === undefined
      ? (await import('./set-up/set-up.ts')).drawSetUp
      : (await import('./set-up/any-set-up.ts')).drawAnySetUp,
  evenness: async () => (await import('./evenness/evenness.ts')).drawEvenness,
  depth: async () => (await import('./depth/depth.ts')).drawDepth,
  tiles: async () => (await import('./tiles/tiles.ts')).drawTiles,
  squareness: async () => (await import('./squareness/squareness.ts')).drawSquareness,
  ledger: async () => (await import('./ledger/ledger.ts')).drawLedger,
  patches: async () => (await import('./patches/patches.ts')).drawPatches,
}
