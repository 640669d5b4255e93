/** Something the person at the terminal can mend; its message is shown as it stands, without a stack. */
export class Trouble extends Error {}
