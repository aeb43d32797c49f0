import { describe, expect, it } from 'vitest'
import type { Part } from '../../../src/worksheet/compose/part-library.ts'
import { asks, cellOf, computes, judges, orderOf, says, typed } from './invented.ts'
import { ALL, behind, LENS, later, PAIR, ROLES, sheet, text } from './invented-set-ups.ts'

describe('a later set-up', () => {
  it('has the roles that each has for itself, under its prefix and its title, and not what all share', () => {
    const one = sheet({}, ALL, [later('raking')])
    expect(orderOf(one)).toEqual([
      ...['[Part sheet]', 'size', 'area', '[Part lens]', 'focal', 'scale', '[Part pair]', 'aperture', 'lit'],
      ...['[In raking: Part lens]', 'raking_focal', 'raking_scale'],
      ...['[In raking: Part pair]', 'raking_aperture', 'raking_lit'],
    ])
    expect(cellOf(one, 'raking_scale')).toMatchObject({ name: 'raking_scale', formula: 'raking_focal / size' })
    expect(cellOf(one, 'raking_heading_optics_0')).toMatchObject({ set_up: 'raking', part: 'lens' })
    expect(cellOf(one, 'heading_optics_0')).not.toHaveProperty('set_up')
  })

  it('starts from what is filled in for the first, and keeps its own', () => {
    const one = sheet({}, ALL, [later('raking')], {
      givens: typed({ focal: '35', aperture: '4', raking_aperture: '5' }),
    })
    expect(['focal', 'raking_focal', 'aperture', 'raking_aperture'].map((id) => text(one, id))).toEqual([
      '35',
      '35',
      '4',
      '5',
    ])
    expect(cellOf(one, 'raking_focal')).toMatchObject({ from: { kind: 'typed' } })
  })

  it('may have parts of its own', () => {
    const one = sheet({ parts: { lamp: { role: 'light', cells: [computes('near', 'scale * 2')] } } }, ALL, [
      later('raking', { part: 'lamp', by: 'hand' }),
      later('uv'),
    ])
    expect(behind(one)).toEqual([
      ...['[In raking: Part lens]', 'raking_focal', 'raking_scale', '[In raking: Part lamp]', 'raking_near'],
      ...['[In uv: Part lens]', 'uv_focal', 'uv_scale', '[In uv: Part pair]', 'uv_aperture', 'uv_lit'],
    ])
    expect(one.parts).toEqual([
      ...[{ part: 'lens' }, { part: 'pair' }, { part: 'sheet' }],
      { part: 'lamp', by: 'hand', setup: 'raking' },
    ])
    expect(one.setups).toEqual([
      { name: 'raking', title: 'In raking' },
      { name: 'uv', title: 'In uv' },
    ])
  })

  it('has what all share in the sections of the first, though it alone reads it', () => {
    const cells = [asks('size'), computes('area', 'size * size'), computes('deep', 'curl * 2', { if_read: true })]
    const one = sheet(
      {
        names: { curl: { role: 'original' }, thick: { role: 'care' } },
        parts: {
          sheet: { role: 'original', cells },
          lamp: { role: 'light', cells: [computes('near', 'deep + thick')] },
        },
      },
      ALL,
      [later('raking', { part: 'lamp', by: 'hand' })],
    )
    expect(orderOf(one)).toEqual([
      ...[
        '[Part sheet]',
        'size',
        'curl',
        'area',
        'deep',
        '[Part lens]',
        'focal',
        'scale',
        '[Part pair]',
        'aperture',
        'lit',
      ],
      ...['[Title of care]', 'thick'],
      ...['[In raking: Part lens]', 'raking_focal', 'raking_scale', '[In raking: Part lamp]', 'raking_near'],
    ])
    expect(text(one, 'raking_near')).toBe('deep + thick')
  })

  it('tells formulas how many set-ups there are', () => {
    const counted = { parts: { care: { role: 'care', cells: [computes('times', '2 * set_up_count')] } } }
    expect(text(sheet(counted, [...ALL, 'care'], []), 'times')).toBe('2')
    expect(text(sheet(counted, [...ALL, 'care'], [later('raking'), later('uv')]), 'times')).toBe('2 * 3')
  })

  it('says a caution that the first says no more, but has its headings', () => {
    const mind = says('Mind the heat.', { role: 'caution' })
    const one = sheet({ parts: { pair: { ...PAIR, cells: [computes('lit', 'scale'), mind, says('Once.')] } } }, ALL, [
      later('raking'),
    ])
    expect(one.cells.filter(({ kind, text: said }) => kind === 'note' && said === 'Mind the heat.')).toHaveLength(1)
    expect(behind(one)).toEqual([
      '[In raking: Part lens]',
      'raking_focal',
      'raking_scale',
      '[In raking: Part pair]',
      'raking_lit',
    ])
  })
})

describe('equipment that all set-ups share', () => {
  const LAMP: Partial<Part> = { role: 'light', cells: [computes('near', 'scale * reach')] }
  const hand = { part: 'lamp', by: 'hand' } as const

  it('is asked in the first where that needs it', () => {
    const one = sheet({ parts: { pair: LAMP } }, ALL, [later('raking')])
    expect(orderOf(one).filter((id) => id.endsWith('reach'))).toEqual(['reach'])
    expect(text(one, 'raking_near')).toBe('raking_scale * reach')
    expect(behind(one)).not.toContain('reach')
  })

  it('is asked, once, in the first set-up that needs it, filled in as it was', () => {
    const one = sheet({ parts: { lamp: LAMP } }, ALL, [later('grey'), later('raking', hand), later('uv', hand)], {
      givens: typed({ reach: '700' }),
    })
    expect(orderOf(one).filter((id) => id.endsWith('reach'))).toEqual(['reach'])
    expect(behind(one).slice(behind(one).indexOf('[In raking: Part lens]'))).toEqual([
      ...['[In raking: Part lens]', 'raking_focal', 'reach', 'raking_scale', '[In raking: Part lamp]', 'raking_near'],
      ...['[In uv: Part lens]', 'uv_focal', 'uv_scale', '[In uv: Part lamp]', 'uv_near'],
    ])
    expect(cellOf(one, 'reach')).toMatchObject({ name: 'reach', value: '700' })
    expect([text(one, 'raking_near'), text(one, 'uv_near')]).toEqual(['raking_scale * reach', 'uv_scale * reach'])
  })

  it('comes with the piece that fills it in', () => {
    const kit = { role: 'optics', entry: 'kit', fills: { reach: 'reach' } } as const
    const names = { column: { ...kit, in_every_set_up: true }, lens: { ...kit, fills: { focal: 'focal' } } }
    const optics = { ...LENS, cells: [asks('lens'), asks('column'), ...(LENS.cells ?? [])] }
    const of = (pair: Partial<Part>) =>
      sheet({ names, parts: { lens: optics, pair, lamp: LAMP } }, ALL, [later('raking', hand), later('uv', hand)])
    const first = behind(of(PAIR)).slice(0, 4)
    expect(first).toEqual(['[In raking: Part lens]', 'raking_lens', 'column', 'raking_focal'])
    expect(cellOf(of(PAIR), 'raking_lens')).toMatchObject({ fills: { focal: 'raking_focal' } })
    expect(cellOf(of(PAIR), 'column')).toMatchObject({ fills: { reach: 'reach' } })
    expect(orderOf(of(PAIR)).filter((id) => id === 'column')).toHaveLength(1)
    expect(orderOf(of(LAMP)).indexOf('column')).toBeLessThan(orderOf(of(LAMP)).indexOf('focal'))
    expect(orderOf(of(LAMP)).filter((id) => id === 'column')).toHaveLength(1)
  })
})

describe('what a set-up is judged by', () => {
  const roles = [...ROLES, { role: 'count', over_set_ups: true }]
  const care: Partial<Part> = {
    role: 'care',
    cells: [
      judges('safe', 'warmth < limit'),
      computes('warmth', 'lit * share'),
      judges('flat', 'area < 9'),
      computes('share', '1 / 2'),
      computes('unread', 'lit * 3'),
    ],
  }
  const names = { limit: { role: 'care' } }

  it('are the checks of what all share that depend on what it has for itself, with the results between', () => {
    const one = sheet({ roles, names, parts: { care } }, [...ALL, 'care'], [later('raking')])
    expect(behind(one)).toEqual([
      ...[
        '[In raking: Part lens]',
        'raking_focal',
        'raking_scale',
        '[In raking: Part pair]',
        'raking_aperture',
        'raking_lit',
      ],
      ...['[In raking: Part care]', 'raking_safe', 'raking_warmth'],
    ])
    expect(text(one, 'raking_safe')).toBe('raking_warmth < limit')
    expect(text(one, 'raking_warmth')).toBe('raking_lit * share')
  })

  it('are none that count what all set-ups give together', () => {
    const count: Partial<Part> = { role: 'count', cells: [judges('enough', 'lit > 3')] }
    const one = sheet({ roles, parts: { count } }, [...ALL, 'count'], [later('raking')])
    expect(orderOf(one)).toContain('enough')
    expect(orderOf(one)).not.toContain('raking_enough')
  })

  it('are none that would have to ask for more', () => {
    const dark: Partial<Part> = { role: 'light', cells: [computes('near', 'scale')] }
    const hand = later('raking', { part: 'dark', by: 'hand' })
    const one = sheet(
      { roles, names, parts: { pair: PAIR, dark, care: { ...care, cells: [judges('safe', 'aperture > limit')] } } },
      [...ALL, 'care'],
      [hand],
    )
    expect(orderOf(one)).toContain('safe')
    expect(orderOf(one)).not.toContain('raking_safe')
  })

  it('are none that depend on it by what is put together alone', () => {
    const dose = { role: 'light', over_set_ups: 'sum' } as const
    const pair: Partial<Part> = { role: 'light', cells: [computes('dose', 'scale')] }
    const one = sheet(
      {
        roles,
        names: { ...names, dose },
        parts: { pair, care: { role: 'care', cells: [judges('safe', 'dose < limit')] } },
      },
      [...ALL, 'care'],
      [later('raking')],
    )
    expect(text(one, 'safe')).toBe('all_dose < limit')
    expect(orderOf(one)).not.toContain('raking_safe')
  })

  it('are results of what all share that its own cells read', () => {
    const sheetPart: Partial<Part> = {
      role: 'original',
      cells: [asks('size'), computes('finest', 'scale * 2', { if_read: true }), computes('coarsest', 'scale * 3')],
    }
    const pair: Partial<Part> = { role: 'light', cells: [computes('lit', 'finest + half')] }
    const half = { role: 'original', derive: 'scale / 2' }
    const one = sheet({ names: { half }, parts: { sheet: sheetPart, pair } }, ALL, [later('raking')])
    expect(behind(one)).toEqual([
      ...['[In raking: Part lens]', 'raking_focal', 'raking_scale', 'raking_finest', 'raking_half'],
      ...['[In raking: Part pair]', 'raking_lit'],
    ])
    expect(text(one, 'raking_lit')).toBe('raking_finest + raking_half')
    expect(text(one, 'raking_half')).toBe('raking_scale / 2')
  })
})

describe('a section of a set-up', () => {
  it('asks for what a part that all share places in its own', () => {
    const cells = [asks('size'), asks('aperture'), computes('area', 'size * 2')]
    const lens: Partial<Part> = { role: 'optics', cells: [asks('focal'), computes('scale', 'focal * aperture')] }
    const shared: Partial<Part> = { role: 'original', claims: ['light'], cells }
    const one = sheet({ parts: { sheet: shared, lens } }, ['sheet', 'lens'], [later('raking')])
    expect(orderOf(one)).toEqual([
      ...['[Part sheet]', 'size', 'aperture', 'area', '[Part lens]', 'focal', 'scale'],
      ...['[In raking: Part lens]', 'raking_focal', 'raking_aperture', 'raking_scale'],
    ])
  })

  it('that would ask for one given alone gives it to the section that reads it', () => {
    // The light reads the focal length; no part of the set-up fills the role it belongs to.
    const pair: Partial<Part> = { role: 'light', cells: [asks('aperture'), computes('lit', 'aperture * focal')] }
    const one = sheet({ parts: { pair } }, ['sheet', 'pair'], [later('raking')])
    expect(orderOf(one)).toEqual([
      ...['[Part sheet]', 'size', 'area', '[Title of optics]', 'focal', '[Part pair]', 'aperture', 'lit'],
      ...['[In raking: Part pair]', 'raking_aperture', 'raking_focal', 'raking_lit'],
    ])
  })

  it('that has no givens of its own takes it at its end', () => {
    const pair: Partial<Part> = { role: 'light', cells: [computes('lit', '2 * focal')] }
    expect(behind(sheet({ parts: { pair } }, ['sheet', 'pair'], [later('raking')]))).toEqual([
      ...['[In raking: Part pair]', 'raking_lit', 'raking_focal'],
    ])
  })

  it('keeps it where nothing of the set-up reads it', () => {
    const care: Partial<Part> = { role: 'care', cells: [computes('total', 'noted * 2')] }
    const names = { noted: { role: 'optics', over_set_ups: 'sum' as const } }
    const one = sheet(
      { names, parts: { care, pair: { role: 'light', cells: [computes('lit', '2')] } } },
      ['pair', 'care'],
      [later('raking')],
    )
    expect(behind(one)).toEqual([
      '[In raking: Title of optics]',
      'raking_noted',
      '[In raking: Part pair]',
      'raking_lit',
    ])
  })

  it('that nobody fills gives all it asks to the section that reads the first of it', () => {
    const names = { noted: { role: 'optics', over_set_ups: 'sum' as const } }
    const pair: Partial<Part> = { role: 'light', cells: [asks('aperture'), computes('lit', 'aperture * focal')] }
    const care: Partial<Part> = { role: 'care', cells: [computes('total', 'noted * 2')] }
    const one = sheet({ names, parts: { pair, care } }, ['sheet', 'pair', 'care'], [later('raking')])
    expect(behind(one)).toEqual([
      ...['[In raking: Part pair]', 'raking_aperture', 'raking_focal', 'raking_noted', 'raking_lit'],
    ])
  })

  it('stays where it has a part, or computes something', () => {
    const pair: Partial<Part> = {
      role: 'light',
      cells: [asks('aperture'), computes('lit', 'aperture * focal * twice')],
    }
    const asking: Partial<Part> = { role: 'optics', cells: [asks('focal')] }
    const names = { twice: { role: 'optics', derive: '2 * focal' } }
    const own = ['[In raking: Part pair]', 'raking_aperture', 'raking_lit']
    expect(behind(sheet({ names, parts: { pair } }, ['sheet', 'pair'], [later('raking')]))).toEqual([
      ...['[In raking: Title of optics]', 'raking_focal', 'raking_twice', ...own],
    ])
    const plain = { role: 'light', cells: [asks('aperture'), computes('lit', 'aperture * focal')] }
    expect(behind(sheet({ parts: { lens: asking, pair: plain } }, ALL, [later('raking')]))).toEqual([
      ...['[In raking: Part lens]', 'raking_focal', ...own],
    ])
  })

  it('that would ask for what is asked before alone is left out', () => {
    const pair: Partial<Part> = { role: 'light', cells: [computes('lit', 'reach * 2')] }
    expect(behind(sheet({ parts: { pair } }, ['sheet', 'pair'], [later('raking')]))).toEqual([
      ...['[In raking: Part pair]', 'raking_lit'],
    ])
    const names = { bulb: { role: 'light', in_every_set_up: true } }
    const lens: Partial<Part> = { role: 'optics', cells: [computes('scale', 'bulb * 2')] }
    expect(behind(sheet({ names, parts: { lens } }, ['sheet', 'lens'], [later('raking')]))).toEqual([
      ...['[In raking: Part lens]', 'raking_scale'],
    ])
  })

  it('has what it reads of all that share it at the end, before its notes', () => {
    const finest = computes('finest', 'aperture * 2', { if_read: true })
    const shared: Partial<Part> = { role: 'original', cells: [asks('size'), computes('area', 'size * size'), finest] }
    const pair: Partial<Part> = { role: 'light', cells: [computes('lit', 'finest'), asks('aperture')] }
    const lamp: Partial<Part> = { role: 'light', cells: [computes('near', 'finest'), says('Mind the lamp.')] }
    const of = (...own: readonly { part: string; by: 'hand' }[]) =>
      behind(sheet({ parts: { sheet: shared, pair, lamp } }, ['sheet', 'pair'], [later('raking', ...own)]))
    expect(of()).toEqual(['[In raking: Part pair]', 'raking_lit', 'raking_aperture', 'raking_finest'])
    expect(of({ part: 'lamp', by: 'hand' })).toEqual([
      ...['[In raking: Part lamp]', 'raking_aperture', 'raking_near', 'raking_finest', 'raking_note_light_3'],
    ])
  })

  it('has it as well where what is derived for it reads it', () => {
    const finest = computes('finest', 'aperture * 2', { if_read: true })
    const shared: Partial<Part> = { role: 'original', cells: [asks('size'), computes('area', 'size * size'), finest] }
    const names = { deep: { role: 'light', derive: 'finest * 2' } }
    const pair: Partial<Part> = { role: 'light', cells: [asks('aperture'), computes('lit', 'deep')] }
    const one = sheet({ names, parts: { sheet: shared, pair } }, ['sheet', 'pair'], [later('raking')])
    expect(behind(one)).toContain('raking_finest')
    expect(text(one, 'raking_deep')).toBe('raking_finest * 2')
  })
})

describe('the drawing of a later set-up', () => {
  const drawing = { needs: ['area'], any: ['lit'], from: { a: 'area', b: 'lit', c: 'focal' } }
  const drawn = (...own: readonly { part: string; by: 'hand' }[]) =>
    sheet(
      {
        drawing,
        names: { lit: { role: 'light' } },
        parts: { lamp: { role: 'light', cells: [computes('near', 'scale')] } },
      },
      ALL,
      [later('raking', ...own)],
    )

  it('shows its own figures, and those that all share', () => {
    expect(cellOf(drawn(), 'drawing_set_up')).toMatchObject({ from: { a: 'area', b: 'lit', c: 'focal' } })
    expect(cellOf(drawn(), 'raking_drawing_set_up')).toMatchObject({
      from: { a: 'area', b: 'raking_lit', c: 'raking_focal' },
    })
  })

  it('shows nothing that the first has for itself', () => {
    expect(cellOf(drawn({ part: 'lamp', by: 'hand' }), 'raking_drawing_set_up')).toBeUndefined()
  })
})
