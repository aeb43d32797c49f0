/** What a cell of each kind is called, in Build and where it has no title. */
export const KIND_TITLES = {
  given: 'Given',
  result: 'Result',
  check: 'Check',
  note: 'Note',
  drawing: 'Drawing',
  steps: 'Steps',
  table: 'Table',
  range: 'Range',
  variants: 'Variants',
  run: 'Run',
  frame: 'Picture',
  function: 'Function',
} as const
