/** What the API tells: topics, and the position to come back with. */
interface Changes {
  readonly position: string;
  readonly topics: readonly string[];
}

const channelName = 'cartwright-live';
const lockName = 'cartwright-live-stream';

/** Ask by oneself where nothing was heard for so long, milliseconds: no stream, or the tab that held it sleeps. */
const silenceMs = 12_000;
/** The tab with the stream says that it is there, milliseconds. */
const aliveMs = 5_000;
/** A stream that was refused is asked for again after this, milliseconds. */
const streamAgainMs = 60_000;

/**
 * One stream a browser: the tab that holds the lock keeps it and tells the others. Where there are no locks (a page that did not come over TLS)
 * each tab has its own; where the stream does not come through, each tab asks what changed, for a few bytes. Gives a function that ends it.
 */
export function listenForChanges(onTopics: (topics: readonly string[]) => void, onSignedOut: () => void): () => void {
  const listening = new Listening(onTopics, onSignedOut);
  return () => listening.end();
}

class Listening {
  private readonly channel = new BroadcastChannel(channelName);
  private readonly ending = new AbortController();
  private readonly timers: ReturnType<typeof setInterval>[] = [];
  private stream: EventSource | undefined;
  private position: string | undefined;
  private heardAt = 0;
  private isAsking = false;
  private letGo: (() => void) | undefined;

  constructor(
    private readonly onTopics: (topics: readonly string[]) => void,
    private readonly onSignedOut: () => void,
  ) {
    this.channel.onmessage = ({ data }: MessageEvent<Changes | 'alive'>) => (data === 'alive' ? this.hear() : this.take(data));
    this.timers.push(setInterval(() => this.look(), aliveMs));
    document.addEventListener('visibilitychange', this.look);
    addEventListener('online', this.look);
    // The first position is asked for at once: what was read before the stream stands is read from there on.
    void this.ask();
    if ('locks' in navigator)
      navigator.locks
        .request(lockName, { signal: this.ending.signal }, () => {
          this.open();
          return new Promise<void>((done) => {
            this.letGo = done;
          });
        })
        .catch(() => undefined);
    else this.open();
  }

  end(): void {
    this.ending.abort();
    this.letGo?.();
    this.stream?.close();
    this.channel.close();
    for (const timer of this.timers) clearInterval(timer);
    document.removeEventListener('visibilitychange', this.look);
    removeEventListener('online', this.look);
  }

  private open(): void {
    if (this.ending.signal.aborted) return;
    const stream = new EventSource(this.position === undefined ? '/api/events' : `/api/events?since=${this.position}`);
    this.stream = stream;
    stream.onmessage = ({ data, lastEventId }: MessageEvent<string>) => {
      const changes = { position: lastEventId, topics: JSON.parse(data) as string[] };
      this.channel.postMessage(changes);
      this.take(changes);
    };
    stream.addEventListener('signed-out', () => {
      stream.close();
      this.onSignedOut();
    });
    stream.onerror = () => {
      // The browser connects again by itself, but not to what answered with an error.
      if (stream.readyState === EventSource.CLOSED) setTimeout(() => this.open(), streamAgainMs);
    };
  }

  private hear(): void {
    this.heardAt = Date.now();
  }

  private take({ position, topics }: Changes): void {
    this.hear();
    this.position = position;
    if (topics.length > 0) this.onTopics(topics);
  }

  private readonly look = (): void => {
    if (this.stream?.readyState === EventSource.OPEN) {
      this.hear();
      this.channel.postMessage('alive');
    } else if (document.visibilityState === 'visible' && Date.now() - this.heardAt > silenceMs) void this.ask();
  };

  private async ask(): Promise<void> {
    if (this.isAsking) return;
    this.isAsking = true;
    try {
      const response = await fetch(`/api/changes${this.position === undefined ? '' : `?since=${this.position}`}`, {
        signal: AbortSignal.timeout(10_000),
      });
      if (response.status === 401) this.onSignedOut();
      else if (response.ok && !this.ending.signal.aborted) this.take((await response.json()) as Changes);
    } catch {
      // Nobody answers: asked again after the next silence.
    } finally {
      this.isAsking = false;
    }
  }
}
