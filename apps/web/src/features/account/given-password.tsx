/** Twelve characters that are not mistaken for one another when they are read out: 60 bits. */
export function givenPassword(): string {
  const letters = 'ABCDEFGHJKMNPQRSTVWXYZ0123456789';
  const picked = [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => letters.charAt(byte % 32)).join('');
  return `${picked.slice(0, 4)}-${picked.slice(4, 8)}-${picked.slice(8)}`;
}

export const TellPassword = ({ person, password }: { person: string; password: string }) => (
  <p role="status">
    Tell {person}: <span className="mono">{password}</span>. It lets in once, within a day, and is not shown again.
  </p>
);
