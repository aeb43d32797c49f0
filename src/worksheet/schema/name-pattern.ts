/** Names of cells: a letter, then letters, digits and underscores; what the language reserves is refused elsewhere. */
export const NAME_PATTERN = /^[A-Za-z][A-Za-z0-9_]{0,63}$/
