import type { Piece } from './piece.ts'

/** A kit no maker's name is in, to begin with. */
export async function genericKit(): Promise<readonly Piece[]> {
  const { pieces } = await import('../../shared/kit.json')
  return pieces as unknown as readonly Piece[]
}
