import { HighlightStyle, LRLanguage, syntaxHighlighting } from '@codemirror/language'
import { styleTags, tags as t } from '@lezer/highlight'
import { parser } from '../syntax/parser.ts'

/** The formula language as the editor sees it. */
export const formulaLanguage = LRLanguage.define({
  name: 'formula',
  parser: parser.configure({
    props: [
      styleTags({
        'Number Fraction FNumber': t.number,
        BadNumber: t.invalid,
        'Unit BracketUnit': t.unit,
        'Or And NotWord': t.logicOperator,
        YesNo: t.bool,
        Text: t.string,
        Name: t.variableName,
        'Call/Name': t.function(t.variableName),
        'ArgumentName PartName': t.propertyName,
        'CompareSign LimitsSign PlusSign TimesSign PowerSign': t.operator,
      }),
    ],
  }),
  languageData: { closeBrackets: { brackets: ['(', '[', '{', '"'] } },
})

/** Distinguished by weight, slant and tone alone: the page uses no colours. */
export const greys = syntaxHighlighting(
  HighlightStyle.define([
    { tag: t.function(t.variableName), fontWeight: '700' },
    { tag: t.number, color: 'var(--ink)' },
    { tag: t.unit, color: 'var(--quiet)' },
    { tag: [t.logicOperator, t.bool], fontWeight: '700', fontStyle: 'italic' },
    { tag: t.string, color: 'var(--quiet)', fontStyle: 'italic' },
    { tag: t.propertyName, color: 'var(--quiet)' },
    { tag: t.invalid, textDecoration: 'underline wavy' },
  ]),
)
