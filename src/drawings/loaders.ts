import type { DrawingKind } from '../worksheet/drawing-kinds.ts'
import type { Draw } from './drawing-options.ts'

/** Fetches what draws a cell that is fed so. */
export type Load = (fed: Readonly<Record<string, string>>) => Promise<Draw>

/** What draws each kind: a file of its own each, so that a sheet loads only what it shows. */
export const LOADERS: Readonly<Record<DrawingKind, Load>> = {
  'set-up': async ({ upright }) =>
    upright === undefined ? (await import('./set-up.ts')).drawSetUp : (await import('./any-set-up.ts')).drawAnySetUp,
  evenness: async () => (await import('./evenness.ts')).drawEvenness,
  depth: async () => (await import('./depth.ts')).drawDepth,
  tiles: async () => (await import('./tiles.ts')).drawTiles,
  squareness: async () => (await import('./squareness.ts')).drawSquareness,
  ledger: async () => (await import('./ledger.ts')).drawLedger,
  patches: async () => (await import('./patches.ts')).drawPatches,
}
