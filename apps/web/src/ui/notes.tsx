import type { Weight } from '#trade';

const words = { agrees: 'agrees', look: 'check', stop: 'stop' } as const;

/** One sentence with its state as shape and word, never as a colour alone. */
export function Note({ weight, children }: { weight: Weight; children: React.ReactNode }) {
  return (
    <p className={`note ${weight}`}>
      <b>{words[weight]}</b> {children}
    </p>
  );
}
