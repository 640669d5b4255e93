/** How many requests may be under way at once. */
export interface AtOnce {
  readonly all: number;
  /** Of one person. */
  readonly person: number;
  /** Of all who are not signed in, together: they never fill the house. */
  readonly strangers: number;
  /** Beside these, of devices that somebody has signed in at: strangers take none of them. */
  readonly knownDevices: number;
  /** Of strangers, from one address. */
  readonly address: number;
  /** Bodies of strangers that are on their way and not there yet; they take none of the places above. */
  readonly halfSent: { readonly all: number; readonly address: number };
}
