import { describe, expect, it } from 'vitest'
import fadgi from '../../../shared/reference/fadgi-2023.json'
import iso from '../../../shared/reference/iso-19264-1.json'
import { gradeValue, METRICS, SCHEMES } from '../../../src/functions/acceptance/grade.ts'
import { LENGTH, NONE, SAMPLING } from '../../../src/units/index.ts'

const grade = (metric: string, value: number, scheme = 'FADGI', material = 'general') =>
  gradeValue(metric, value, NONE, scheme, material)
const PPI = 1 / 0.0254

describe('grading by a published table', () => {
  it('gives the best class whose limit holds, a value on the limit included', () => {
    expect([1.5, 1.51, 4.5, 6, 6.01].map((value) => grade('tone', value))).toEqual([
      '4 star',
      '3 star',
      '2 star',
      '1 star',
      'below',
    ])
    expect(grade('mtf10', 0.9)).toBe('4 star')
    expect(grade('mtf10', 0.59)).toBe('below')
    expect(gradeValue('sampling', 300 * PPI, SAMPLING, 'FADGI', 'general')).toBe('3 star')
  })

  it('counts a computed value on the limit as on it', () => {
    expect(grade('tone', 0.1 + 0.2 + 1.2)).toBe('4 star')
  })

  it('takes an error of either sign by its size, and a gain between two limits', () => {
    expect(grade('tone', -2)).toBe('3 star')
    expect(grade('gain highlights', 0.75, 'ISO 19264-1')).toBe('B')
    expect(grade('gain highlights', 1.35, 'ISO 19264-1')).toBe('below')
  })

  it('does not mind capitals or spaces', () => {
    expect(grade(' Colour  Mean ', 2, 'fadgi', 'General')).toBe('4 star')
  })

  it('says what the table holds when asked for what it does not', () => {
    expect(() => grade('tone', 1, 'DIN')).toThrow('"FADGI", "ISO 19264-1"')
    expect(() => grade('tone', 1, 'FADGI', 'maps')).toThrow('"general"')
    expect(() => grade('gloss', 1)).toThrow('"tone"')
    expect(() => gradeValue('sampling', 400, NONE, 'FADGI', 'general')).toThrow('in ppi')
    expect(() => gradeValue('tone', 1, LENGTH, 'FADGI', 'general')).toThrow('a plain number')
    expect(SCHEMES).toEqual(['FADGI', 'ISO 19264-1'])
    expect(METRICS).toContain('colour 90th percentile')
  })
})

describe('grading by the studio’s own table', () => {
  const own = 'fine, fair, draft; tone: 2, 3, 4; uniformity: 3 %, 5 %, 8 %; sampling: >= 400 ppi, 300 ppi, 200 ppi'

  it('reads classes, limits and units from the text', () => {
    expect(grade('tone', -3, own)).toBe('fair')
    expect(grade('uniformity', 0.081, own)).toBe('below')
    expect(gradeValue('sampling', 305 * PPI, SAMPLING, own, '')).toBe('fair')
  })

  it('says what cannot be read', () => {
    expect(() => grade('gloss', 1, own)).toThrow('"tone", "uniformity", "sampling"')
    expect(() => grade('tone', 1, 'A, B; tone: 2')).toThrow('1 limits for 2 classes')
    expect(() => grade('tone', 1, 'A, B; tone 2, 3')).toThrow('no colon')
    expect(() => grade('tone', 1, 'A; tone: two')).toThrow('cannot be read')
    expect(() => grade('tone', 1, 'A, B; tone: 2, 3 mm')).toThrow('one kind of unit')
    expect(() => gradeValue('sampling', 305, NONE, own, '')).toThrow('in ppi')
    expect(() => grade('tone', 1, '; tone: 2')).toThrow('best first')
  })
})

describe('the published tables', () => {
  it('give every cell a source that is described', () => {
    for (const table of [fadgi, iso])
      for (const { metrics } of Object.values(table.materials))
        for (const [name, metric] of Object.entries(metrics as Record<string, { limits: { source: string }[] }>)) {
          expect(metric.limits, name).toHaveLength(table.classes.length)
          for (const { source } of metric.limits)
            expect(Object.keys(table.sources), `${table.scheme} ${name}`).toContain(source)
        }
  })

  it('never ask more of a lesser class', () => {
    for (const table of [fadgi, iso])
      for (const [name, { limits }] of Object.entries(table.materials.general.metrics) as [
        string,
        { limits: { most?: number; least?: number }[] },
      ][])
        limits.slice(1).forEach((limit, i) => {
          const better = limits[i] as { most?: number; least?: number }
          if (limit.most !== undefined) expect(limit.most, name).toBeGreaterThanOrEqual(better.most as number)
          if (limit.least !== undefined) expect(limit.least, name).toBeLessThanOrEqual(better.least as number)
        })
  })
})
