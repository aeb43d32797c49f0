import {
  autocompletion,
  closeBrackets,
  closeBracketsKeymap,
  closeCompletion,
  completionKeymap,
  selectedCompletion,
} from '@codemirror/autocomplete'
import { defaultKeymap } from '@codemirror/commands'
import { bracketMatching, LanguageSupport } from '@codemirror/language'
import { type Diagnostic as Flaw, lintKeymap, setDiagnostics } from '@codemirror/lint'
import { EditorState } from '@codemirror/state'
import { drawSelection, keymap, tooltips } from '@codemirror/view'
// Not one of its set-ups: they bring a history of their own, and undo belongs to the sheet.
import { EditorView } from 'codemirror'
import type { Diagnostic } from '../values/diagnostic.ts'
import type { Guide } from '../values/function-record.ts'
import type { Scope } from '../values/scope.ts'
import { argumentHelp } from './argument-help.ts'
import { completeFormula } from './completion.ts'
import { formulaLanguage, greys } from './highlight.ts'
import { hoverHelp } from './hover.ts'
import { theme } from './theme.ts'
import { typedText } from './typed-text.ts'

export interface EditorOptions {
  readonly parent: HTMLElement
  /** Where the styles go: the shadow root the parent is in. */
  readonly root: ShadowRoot
  readonly text: string
  /** What is selected, in characters from the start: the caret where both are equal. */
  readonly selected: { readonly from: number; readonly to: number }
  /** What the field is called, for those who do not see it. */
  readonly label: string
  /** The id, inside the same root, of what is said about the field. */
  readonly describedBy?: string
  readonly scope: () => Scope
  readonly guide: Guide
  readonly called: (name: string) => string
  /** What a cell gives now, as shown; empty where it gives nothing. */
  readonly figure: (name: string) => string
  /** Whether the text before the caret is a formula, so that names are offered; always where nothing is said. */
  readonly isFormula?: ((before: string) => boolean) | undefined
  readonly onText: (text: string) => void
  /** Enter: save and leave. */
  readonly onKeep: () => void
  /** Escape: put back what was there and leave. */
  readonly onRestore: () => void
  readonly onFocus: () => void
}

export interface FormulaEditor {
  readonly text: string
  /** Puts another text in, as when a change is undone. */
  setText(text: string): void
  setDiagnostics(diagnostics: readonly Diagnostic[]): void
  focus(): void
  destroy(): void
}

const oneLine = EditorState.transactionFilter.of((transaction) =>
  transaction.newDoc.lines > 1
    ? [transaction, { changes: lineBreaks(transaction.newDoc.toString()), sequential: true }]
    : transaction,
)

const lineBreaks = (text: string): { from: number; to: number; insert: string }[] =>
  [...text.matchAll(/\s*\n\s*/g)].map((match) => ({
    from: match.index,
    to: match.index + match[0].length,
    insert: ' ',
  }))

/** The selected completion is already typed in full: there is nothing left for Enter to complete. */
function keepsWhole(view: EditorView): boolean {
  const label = selectedCompletion(view.state)?.label
  if (label === undefined) return false
  const { head } = view.state.selection.main
  const whole = view.state.sliceDoc(head - label.length, head) === label
  return whole && closeCompletion(view)
}

/** Whether a list of completions is on screen: one that is made anew at the next key still is, though it cannot be chosen from. */
const showsList = (view: EditorView): boolean => view.dom.querySelector('.cm-tooltip-autocomplete') !== null

const did = (act: () => void) => (): boolean => {
  act()
  return true
}

function flaw(diagnostic: Diagnostic, length: number): Flaw {
  const from = Math.min(diagnostic.from, length)
  return {
    from,
    to: Math.max(from, Math.min(diagnostic.to, length)),
    severity: diagnostic.severity,
    message: diagnostic.message,
    actions: diagnostic.fixes.map((fix) => ({
      name: fix.label,
      apply: (view) => {
        view.dispatch({ changes: { from: fix.from, to: fix.to, insert: fix.insert } })
        view.focus()
      },
    })),
  }
}

/** Opens the editor of one formula. This module and all it needs load only when a formula is first opened. */
export function openFormulaEditor(options: EditorOptions): FormulaEditor {
  let silent = false
  const view = new EditorView({
    parent: options.parent,
    root: options.root,
    state: EditorState.create({
      doc: options.text,
      selection: {
        anchor: Math.min(options.selected.from, options.text.length),
        head: Math.min(options.selected.to, options.text.length),
      },
      extensions: [
        oneLine,
        typedText,
        EditorView.lineWrapping,
        drawSelection({ cursorBlinkRate: 0 }),
        bracketMatching(),
        closeBrackets(),
        new LanguageSupport(formulaLanguage),
        greys,
        theme,
        tooltips({ position: 'fixed' }),
        autocompletion({
          override: [completeFormula(options.scope, options.guide, options.isFormula)],
          icons: false,
          defaultKeymap: false,
          // Enter right after the list has opened would else leave the formula with half a name.
          interactionDelay: 0,
          maxRenderedOptions: 60,
        }),
        argumentHelp(options.scope),
        hoverHelp(options.scope, options.guide, options.called, options.figure),
        EditorView.contentAttributes.of({
          'aria-label': options.label,
          ...(options.describedBy ? { 'aria-describedby': options.describedBy } : {}),
          autocapitalize: 'off',
        }),
        // Undo belongs to the sheet: one history, so that a step back is the same step everywhere.
        keymap.of([
          { key: 'Enter', run: (view) => keepsWhole(view) && did(options.onKeep)() },
          { key: 'Escape', run: (view) => !showsList(view) && did(options.onRestore)() },
          ...completionKeymap,
          ...closeBracketsKeymap,
          { key: 'Enter', run: did(options.onKeep) },
          ...lintKeymap,
          ...defaultKeymap.filter(({ key }) => !/Enter|Alt-Arrow|Mod-\[|Mod-\]|Escape/.test(key ?? '')),
        ]),
        EditorView.updateListener.of((update) => {
          if (update.focusChanged && update.view.hasFocus) options.onFocus()
          if (update.docChanged && !silent) options.onText(update.state.doc.toString())
        }),
      ],
    }),
  })
  return {
    get text() {
      return view.state.doc.toString()
    },
    setText(text) {
      const current = view.state.doc.toString()
      if (text === current) return
      silent = true
      view.dispatch({ changes: { from: 0, to: current.length, insert: text } })
      silent = false
    },
    setDiagnostics(diagnostics) {
      const length = view.state.doc.length
      view.dispatch(
        setDiagnostics(
          view.state,
          diagnostics.map((one) => flaw(one, length)),
        ),
      )
    },
    focus: () => view.focus(),
    destroy: () => view.destroy(),
  }
}
