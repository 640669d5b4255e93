import { useEffect, useRef, useState } from 'react';
import { seenCodes } from '#pack-plan';
import { Note } from '../../../ui/notes.js';

/** A look at the picture this often, milliseconds. */
const lookEveryMs = 150;
const widest = 960;

interface Detector {
  detect(picture: HTMLCanvasElement): Promise<readonly { readonly rawValue: string }[]>;
}
interface DetectorKind {
  new (of: { formats: string[] }): Detector;
  getSupportedFormats(): Promise<string[]>;
}
const wanted = ['qr_code', 'code_128', 'data_matrix'];
type Reads = (picture: HTMLCanvasElement) => Promise<readonly string[]>;

/** Codes by the camera, read by the browser's own detector or by a decoder that comes along. */
export function Camera({ onCode }: { onCode: (code: string) => void }) {
  const [isOpen, setIsOpen] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const close = (said: string | null) => {
    setIsOpen(false);
    setFault(said);
  };
  return (
    <>
      {isOpen && <View onCode={onCode} onEnd={close} />}
      <p className="row">
        <button type="button" className="plain" aria-pressed={isOpen} onClick={() => (isOpen ? close(null) : setIsOpen(true))}>
          {isOpen ? 'Close the camera' : 'Use the camera'}
        </button>
      </p>
      {fault && <Note weight="look">{fault}</Note>}
    </>
  );
}

function View({ onCode, onEnd }: { onCode: (code: string) => void; onEnd: (said: string) => void }) {
  const video = useRef<HTMLVideoElement>(null);
  const latest = useRef({ onCode, onEnd });
  useEffect(() => {
    latest.current = { onCode, onEnd };
  });
  useEffect(() => {
    const at = video.current;
    const ending = new AbortController();
    if (at)
      watch(at, (code) => latest.current.onCode(code), ending.signal).catch((cause: unknown) => {
        if (!ending.signal.aborted) latest.current.onEnd(whyNot(cause));
      });
    return () => ending.abort();
  }, []);
  return (
    <div className="camera">
      <video ref={video} muted playsInline aria-label="What the camera sees" />
    </div>
  );
}

/** Reads what the camera sees until it is told to stop. */
async function watch(video: HTMLVideoElement, onCode: (code: string) => void, stop: AbortSignal): Promise<void> {
  // Left out by browsers where the page did not come over TLS.
  if (!('mediaDevices' in navigator)) throw new DOMException('no camera', 'SecurityError');
  const reads = await makeReader();
  const stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment', width: { ideal: 1280 } }, audio: false });
  try {
    video.srcObject = stream;
    await video.play();
    const canvas = document.createElement('canvas');
    const isNew = seenCodes();
    while (!stop.aborted) {
      if (take(video, canvas)) for (const code of await reads(canvas)) if (isNew(code, performance.now())) onCode(code);
      await new Promise((soon) => setTimeout(soon, lookEveryMs));
    }
  } finally {
    for (const track of stream.getTracks()) track.stop();
  }
}

/** The picture as it is now; false where there is none yet. */
function take(video: HTMLVideoElement, canvas: HTMLCanvasElement): boolean {
  const { videoWidth, videoHeight } = video;
  if (videoWidth === 0) return false;
  const scale = Math.min(1, widest / videoWidth);
  canvas.width = Math.round(videoWidth * scale);
  canvas.height = Math.round(videoHeight * scale);
  canvas.getContext('2d', { willReadFrequently: true })?.drawImage(video, 0, 0, canvas.width, canvas.height);
  return true;
}

/** What the browser itself reads codes with; where it has nothing, a decoder that is loaded now. */
async function makeReader(): Promise<Reads> {
  const own = (globalThis as { BarcodeDetector?: DetectorKind }).BarcodeDetector;
  const formats = ((await own?.getSupportedFormats()) ?? []).filter((each) => wanted.includes(each));
  if (own && formats.length === wanted.length) {
    const detector = new own({ formats });
    return async (picture) => (await detector.detect(picture)).map((each) => each.rawValue);
  }
  const { readPicture } = await import('./read-picture.js');
  return async (picture) => {
    const pixels = picture.getContext('2d')?.getImageData(0, 0, picture.width, picture.height);
    return pixels ? readPicture(pixels) : [];
  };
}

function whyNot(cause: unknown): string {
  const name = cause instanceof Error ? cause.name : '';
  if (name === 'NotAllowedError') return 'The camera is not allowed for this page: allow it in the browser, or type the serial.';
  if (name === 'SecurityError') return 'The camera needs an address that begins with https: type the serial, or use a reader that types.';
  if (name === 'NotFoundError') return 'There is no camera on this device: type the serial, or use a reader that types.';
  return 'The camera cannot be used now: type the serial, or use a reader that types.';
}
