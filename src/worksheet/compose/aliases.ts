import type { PartLibrary } from './part-library.ts'

/** The names of a sheet that an older name means, among those the sheet has. */
export const namesFor = (library: PartLibrary, older: string, has: (name: string) => boolean): readonly string[] =>
  (library.aliases.get(older) ?? []).filter(has)
