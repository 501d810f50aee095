/** With this the program in the window ends where it has told its user of a problem; Electron has no such code itself. */
export const problemCode = 3;
