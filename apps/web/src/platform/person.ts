/** Who is signed in on this screen. */
export interface Person {
  readonly id: string;
  readonly name: string;
  readonly role: string;
}
