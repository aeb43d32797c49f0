import { describe, expect, it } from 'vitest'
import type { SetUp } from '../../../src/worksheet/compose/compose.ts'
import type { Part } from '../../../src/worksheet/compose/part-library.ts'
import type { Worksheet } from '../../../src/worksheet/index.ts'
import { asks, cellOf, computes, type Invented, orderOf } from './invented.ts'
import { ALL, LENS, later, SHEET, sheet, text } from './invented-set-ups.ts'

describe('what is put together over the set-ups', () => {
  const care: Partial<Part> = { role: 'care', cells: [computes('total', 'dose * 2 + most')] }
  const names = {
    dose: { role: 'light', over_set_ups: 'sum', label: 'Dose', unit: 'lx' },
    most: { role: 'light', over_set_ups: 'greatest', label: 'Most' },
  } as const
  const light: Partial<Part> = {
    role: 'light',
    cells: [
      computes('dose', 'scale * 3', { label: 'Dose', unit: 'lx' }),
      computes('most', 'scale', { label: 'Most' }),
      computes('own', 'dose + most'),
    ],
  }
  const of = (setUps: readonly SetUp[], more: Invented['parts'] = {}) =>
    sheet({ names, parts: { pair: light, care, ...more } }, [...ALL, 'care'], setUps)

  it('is the figure itself where there is one set-up', () => {
    expect(text(of([]), 'total')).toBe('dose * 2 + most')
    expect(orderOf(of([]))).not.toContain('all_dose')
  })

  it('is added up, or the greatest, and what all share reads that', () => {
    const one = of([later('raking'), later('uv')])
    expect(text(one, 'total')).toBe('all_dose * 2 + all_most')
    expect(cellOf(one, 'all_dose')).toStrictEqual({
      ...{ kind: 'result', id: 'all_dose', name: 'all_dose', label: 'Dose, all set-ups', unit: 'lx' },
      formula: 'dose + raking_dose + uv_dose',
    })
    expect(cellOf(one, 'all_most')).toStrictEqual({
      ...{ kind: 'result', id: 'all_most', name: 'all_most', label: 'Most, at most in a set-up' },
      formula: 'max(most, raking_most, uv_most)',
    })
    // What each has for itself reads its own.
    expect([text(one, 'own'), text(one, 'raking_own')]).toEqual(['dose + most', 'raking_dose + raking_most'])
    expect(orderOf(one).slice(6, 12)).toEqual(['[Part pair]', 'dose', 'all_dose', 'most', 'all_most', 'own'])
  })

  it('leaves out a set-up that has none of it for the greatest, and asks for what is added up', () => {
    const dark: Partial<Part> = { role: 'light', cells: [computes('near', 'scale')] }
    const one = of([later('uv', { part: 'dark', by: 'hand' })], { dark })
    expect(text(one, 'all_most')).toBe('most')
    expect(text(one, 'all_dose')).toBe('dose + uv_dose')
    expect(cellOf(one, 'uv_dose')).toMatchObject({ kind: 'given' })
  })

  it('is of the first where a later set-up alone needs what it reads', () => {
    const dark: Partial<Part> = { role: 'light', cells: [computes('near', 'scale')] }
    const one = sheet(
      { names, parts: { pair: dark, lamp: light, care } },
      [...ALL, 'care'],
      [later('raking', { part: 'lamp', by: 'hand' })],
    )
    expect(text(one, 'all_dose')).toBe('dose + raking_dose')
    expect(cellOf(one, 'dose')).toMatchObject({ kind: 'given' })
  })

  it('is called by its name where it has no label', () => {
    const bare = { ...light, cells: [computes('dose', 'scale'), computes('most', 'scale')] }
    expect(cellOf(of([later('raking')], { pair: bare }), 'all_dose')).toMatchObject({ label: 'dose, all set-ups' })
  })
})

describe('implicit texts that are added up over the set-ups', () => {
  const frames = (texts: readonly (string | undefined)[], more: object = { label: 'Frames', unit: '1' }) => {
    const [first, ...others] = texts
    const framing = (one: string | undefined): Partial<Part> => ({
      role: 'light',
      ...(one === undefined ? {} : { inline: { frames: one } }),
      cells: [
        computes('across', 'scale', { if_read: true }),
        computes('n2', 'scale', { if_read: true }),
        computes('lit', 'scale'),
      ],
    })
    return sheet(
      {
        names: { frames: { role: 'light', inline: '1', over_set_ups: 'sum', ...more } },
        parts: {
          pair: framing(first),
          ...Object.fromEntries(others.map((one, at) => [`more${at}`, framing(one)])),
          care: { role: 'care', cells: [computes('hours', 'frames * 3')] },
        },
      },
      [...ALL, 'care'],
      others.map((_, at) => later(`later${at}`, { part: `more${at}`, by: 'hand' })),
    )
  }

  it('are plain numbers at once, and texts in the names of each set-up', () => {
    expect(text(frames(['2']), 'hours')).toBe('2 * 3')
    expect(text(frames([undefined, undefined, '4']), 'hours')).toBe('6 * 3')
    const one = frames(['across * 2', undefined, 'across'])
    expect(text(one, 'hours')).toBe('((across * 2) + later1_across + 1) * 3')
    expect(orderOf(one)).toContain('later1_across')
    expect(orderOf(one)).not.toContain('later0_across')
  })

  it('are numbers of any length, and no texts that begin or end with one', () => {
    expect(text(frames(['12', '13']), 'hours')).toBe('25 * 3')
    expect(text(frames(['n2', '1']), 'hours')).toBe('(n2 + 1) * 3')
    expect(text(frames(['2 mm', '1']), 'hours')).toBe('(2 mm + 1) * 3')
  })

  it('are shown at the end where no section is of one set-up alone', () => {
    const names = { frames: { role: 'light', inline: '1', over_set_ups: 'sum', label: 'Frames' } } as const
    const care: Partial<Part> = { role: 'care', cells: [computes('hours', 'frames * 3')] }
    const one = sheet({ names, parts: { care } }, ['sheet', 'care'], [later('raking')])
    expect(orderOf(one)).toEqual(['[Part sheet]', 'size', 'area', '[Part care]', 'hours', 'all_frames'])
  })

  it('leave out a set-up that has none', () => {
    expect(text(frames(['across', '0']), 'hours')).toBe('across * 3')
    expect(text(frames(['0', '0']), 'hours')).toBe('0 * 3')
  })

  it('are those of a part that the set-up has chosen for itself', () => {
    const names = { frames: { role: 'light', inline: '3', over_set_ups: 'sum' } } as const
    const single: Partial<Part> = {
      role: 'light',
      rank: 1,
      inline_where_chosen: { frames: '1' },
      cells: [computes('lit', 'scale')],
    }
    const care: Partial<Part> = { role: 'care', cells: [computes('hours', 'frames * 9')] }
    const of = (first: readonly string[], own: readonly string[]) =>
      text(sheet({ names, parts: { single, care } }, [...first, 'care'], [later('raking', ...own)]), 'hours')
    expect(of(ALL, ['single'])).toBe('4 * 9')
    expect(of([...ALL, 'single'], [])).toBe('6 * 9')
  })

  it('are shown at the end of the first section that each has for itself', () => {
    const one = frames(['across', '2'])
    expect(cellOf(one, 'all_frames')).toStrictEqual({
      ...{ kind: 'result', id: 'all_frames', name: 'all_frames', label: 'Frames, all set-ups', unit: '1' },
      formula: 'across + 2',
    })
    expect(orderOf(one).slice(3, 8)).toEqual(['[Part lens]', 'focal', 'scale', 'all_frames', '[Part pair]'])
    expect(orderOf(frames(['across', '2'], {}))).not.toContain('all_frames')
    expect(orderOf(frames(['across']))).not.toContain('all_frames')
  })
})

describe('the run of a sheet', () => {
  const count: Partial<Part> = {
    role: 'care',
    cells: [
      { kind: 'table', name: 'list', columns: [{ name: 'width' }], rows: [] },
      {
        kind: 'run',
        key: 'run',
        of: 'list',
        from: { width: 'width', frames: 'scale * width', time: 'aperture', same: 'size', step: 'stepped' },
      },
    ],
  }
  const names = { stepped: { role: 'light', inline: 'aperture * 2' } }

  it('plans the originals once for each set-up, with what differs there', () => {
    const one = sheet({ names, parts: { care: count } }, [...ALL, 'care'], [later('raking'), later('uv')])
    expect(cellOf(one, 'run_run')).toEqual({
      ...{ kind: 'run', id: 'run_run', of: 'list' },
      from: { width: 'width', frames: 'scale * width', time: 'aperture', same: 'size', step: '(aperture * 2)' },
      set_ups: [
        {
          title: 'In raking',
          from: { frames: 'raking_scale * width', time: 'raking_aperture', step: '(raking_aperture * 2)' },
        },
        { title: 'In uv', from: { frames: 'uv_scale * width', time: 'uv_aperture', step: '(uv_aperture * 2)' } },
      ],
    })
    expect(cellOf(sheet({ names, parts: { care: count } }, [...ALL, 'care'], []), 'run_run')).not.toHaveProperty(
      'set_ups',
    )
  })
})

describe('the steps of a sheet with set-ups', () => {
  const step = (text: string, more: object = {}) => ({ phase: 'do', text, ...more })
  const listed = (worksheet: Worksheet) =>
    worksheet.cells.flatMap((cell) =>
      cell.kind === 'steps' ? [[cell.id, cell.steps.map(({ text: said, reading }) => `${said} ${reading ?? ''}`)]] : [],
    )

  it('are a list for each, of what all share the readings that a set-up takes for itself', () => {
    const one = sheet(
      {
        names: { lean: { role: 'optics', in_every_set_up: true } },
        parts: {
          sheet: {
            ...SHEET,
            steps: [step('Lay it.'), step('Weigh.', { reading: 'size' }), step('Read.', { reading: 'lit' })],
          },
          lens: {
            ...LENS,
            cells: [asks('focal'), computes('scale', 'focal / lean')],
            steps: [step('Focus.'), step('Level.', { reading: 'lean' })],
          },
        },
      },
      ALL,
      [later('raking')],
    )
    expect(listed(one)).toEqual([
      ['steps_work', ['Lay it. ', 'Weigh. size', 'Read. lit', 'Focus. ', 'Level. lean']],
      ['raking_steps_work', ['Read. raking_lit', 'Focus. ']],
    ])
  })
})
