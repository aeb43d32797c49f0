import type { Piece } from './piece.ts'

/** A kit of common equipment without makers' names, to start from. */
export async function genericKit(): Promise<readonly Piece[]> {
  const { pieces } = await import('../../shared/kit.json')
  return pieces as unknown as readonly Piece[]
}
