/** A call could not be made, or its answer did not come, because the desk cannot be reached. */
export class DeskAway extends Error {
  readonly kind = 'desk-away';
  /** True where the call had been sent, so that it may have been carried out all the same. */
  readonly sent: boolean;

  constructor(sent: boolean) {
    super(
      sent
        ? 'The connection to the desk broke before its answer came.'
        : 'The desk does not answer; it is tried again and again.',
    );
    this.name = 'DeskAway';
    this.sent = sent;
  }
}
