import { EditorView } from '@codemirror/view'

/**
 * Text typed over a selection first takes the selection out by way of the editor's state. Left to itself the browser
 * carries the style of what it replaces along as an inline style, which the page's policy refuses with an error on the
 * console.
 */
export const typedText = EditorView.domEventHandlers({
  beforeinput(event, view) {
    const { from, to } = view.state.selection.main
    if (event.inputType !== 'insertText' || from === to || event.isComposing || view.composing) return false
    view.dispatch({ changes: { from, to }, selection: { anchor: from }, userEvent: 'delete.selection' })
    return false
  },
})
