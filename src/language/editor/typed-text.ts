import { EditorView } from '@codemirror/view'

/**
 * Typed text goes in by way of the editor's state. Left to itself the browser, when it types over styled text, carries
 * the old style along as an inline style, which the page's policy refuses with an error on the console.
 */
export const typedText = EditorView.domEventHandlers({
  beforeinput(event, view) {
    const text = event.data
    if (event.inputType !== 'insertText' || text === null || event.isComposing || view.composing) return false
    const { from, to } = view.state.selection.main
    const insert = () =>
      view.state.update({
        changes: { from, to, insert: text },
        selection: { anchor: from + text.length },
        userEvent: 'input.type',
        scrollIntoView: true,
      })
    const taken = view.state.facet(EditorView.inputHandler).some((handler) => handler(view, from, to, text, insert))
    if (!taken) view.dispatch(insert())
    event.preventDefault()
    return true
  },
})
