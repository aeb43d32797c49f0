import { describe, expect, it } from 'vitest'
import { isPlace, namesFor, partLibrary } from '../../../src/worksheet/compose/part-library.ts'
import { asks, computes, invented } from './invented.ts'

describe('a library of parts', () => {
  const made = () =>
    invented({
      roles: ['optics'],
      names: {
        plain: {},
        scale: { aliases: ['ratio', 'size_ratio'] },
        reach: { in_every_set_up: true, aliases: ['column_top'] },
        free: { aliases: ['column_top', 'ratio'] },
      },
      parts: { lens: {}, pair: {} },
      phases: ['do'],
      settings: { camera: ['scale'] },
    })

  it('is put together from its files, each part with its file’s name', () => {
    const library = made()
    expect([...library.parts].map(([id, part]) => [id, part.id])).toEqual([
      ['lens', 'lens'],
      ['pair', 'pair'],
    ])
    expect(library).toMatchObject({ phases: ['do'], settings: { camera: ['scale'] }, roles: [{ role: 'optics' }] })
    expect([...library.names.keys()]).toEqual(['plain', 'scale', 'reach', 'free'])
    const { roles, phases, settings, drawing, choosing } = library
    const setUps = [{ prefix: 'raking', title: 'Raking light', about: '', parts: [] }]
    const file = { roles, phases, settings, drawing, choosing, set_ups: setUps }
    expect(partLibrary(file, { names: {} }, {})).toMatchObject({ setUps, drawing, choosing })
  })

  it('knows each older name by all that took its place', () => {
    expect(made().aliases).toEqual(
      new Map([
        ['ratio', ['scale', 'free']],
        ['size_ratio', ['scale']],
        ['column_top', ['reach', 'free']],
      ]),
    )
  })

  it('tells where a given goes from a cell', () => {
    expect([asks('scale'), computes('scale', '1')].map(isPlace)).toEqual([true, false])
  })

  it('finds what an older name means in a sheet, also in one of its set-ups', () => {
    const library = made()
    const meant = (older: string, there: readonly string[], prefixes?: readonly string[]) =>
      namesFor(library, older, (name) => there.includes(name), prefixes)
    expect(meant('ratio', ['scale', 'free', 'other'])).toEqual(['scale', 'free'])
    expect(meant('ratio', ['free'])).toEqual(['free'])
    expect(meant('unheard_of', ['free'])).toEqual([])
    const all = ['scale', 'free', 'reach', 'raking_scale', 'raking_free', 'uv_scale']
    expect(meant('raking_ratio', all, ['raking', 'uv'])).toEqual(['raking_scale', 'raking_free'])
    expect(meant('uv_ratio', all, ['raking', 'uv'])).toEqual(['uv_scale'])
    expect(meant('uv_ratio', all)).toEqual([])
    // What all set-ups share has no prefix.
    expect(meant('raking_reach', all, ['raking'])).toEqual(['reach'])
    expect(meant('raking_column_top', all, ['raking'])).toEqual(['reach', 'raking_free'])
    expect(meant('raking_unheard_of', all, ['raking'])).toEqual([])
    // Of another word of as many letters.
    expect(meant('shaded_ratio', all, ['raking'])).toEqual([])
    const inAny = (older: string) => namesFor(library, older, () => true, ['raking', 'uv'])
    expect(inAny('raking_ratio')).toEqual(['raking_scale', 'raking_free'])
    expect(inAny('raking_reach')).toEqual(['reach'])
    expect(inAny('unheard_of')).toEqual([])
  })
})
