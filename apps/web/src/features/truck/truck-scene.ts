import {
  BoxGeometry,
  CanvasTexture,
  EdgesGeometry,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  PerspectiveCamera,
  SRGBColorSpace,
  Scene,
  Sprite,
  SpriteMaterial,
  WebGLRenderer,
} from 'three';
import type { Placement, TruckResultOne } from '#pack-plan';

/** From where the load is looked at: angles in degrees, distance as a share of the truck's length. */
export interface View {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly distance: number;
}

export const startView: View = { azimuthDeg: 28, elevationDeg: 28, distance: 1.05 };

/** The view after so many steps of turning, rising and coming nearer. */
export function turned(view: View, azimuth: number, elevation: number, nearer: number): View {
  return {
    azimuthDeg: (view.azimuthDeg + azimuth * 8) % 360,
    elevationDeg: Math.min(89, Math.max(-20, view.elevationDeg + elevation * 6)),
    distance: Math.min(2.5, Math.max(0.35, view.distance * 0.88 ** nearer)),
  };
}

interface Ink {
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  readonly mono: string;
}

/** The load drawn in three dimensions, in metres: x to the door, y up, z to the left wall of someone who looks in from the door. Throws where the browser has no WebGL. */
export class TruckScene {
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new PerspectiveCamera(40, 1, 0.1, 200);
  private readonly rows: Group[] = [];
  private readonly length: number;
  private view: View = startView;

  constructor(
    private readonly holder: HTMLElement,
    truck: TruckResultOne,
  ) {
    this.renderer = new WebGLRenderer({ antialias: true, alpha: true });
    this.renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
    holder.append(this.renderer.domElement);
    this.length = truck.innerLengthMm / 1000;
    const style = getComputedStyle(holder);
    const value = (name: string) => style.getPropertyValue(name).trim();
    const ink: Ink = { paper: value('--paper'), ink: value('--ink'), soft: value('--soft'), mono: value('--mono') };
    const middle = new Group();
    middle.position.set(-this.length / 2, -truck.innerHeightMm / 2000, truck.innerWidthMm / 2000);
    middle.add(spaceOf(truck, ink));
    const kept = new Set(truck.kept?.map((each) => each.piece));
    for (const row of truck.rows) {
      const group = new Group();
      for (const each of truck.placements.filter((one) => row.pieces.includes(one.id))) group.add(pieceOf(each, ink, kept.has(each.id)));
      group.add(labelOf(String(row.number), ink, (row.fromMm + row.toMm) / 2000, 0, 0.35, 0.5));
      this.rows.push(group);
      middle.add(group);
    }
    middle.add(labelOf('nose', ink, -0.5, truck.innerHeightMm / 2000, -truck.innerWidthMm / 2000, 0.5));
    middle.add(labelOf('door', ink, this.length + 0.5, truck.innerHeightMm / 2000, -truck.innerWidthMm / 2000, 0.5));
    this.scene.add(middle);
    this.fit();
  }

  /** Rows 1 to `upTo` as seen from `view`. */
  show(view: View, upTo: number): void {
    this.view = view;
    this.rows.forEach((row, index) => (row.visible = index < upTo));
    this.draw();
  }

  fit(): void {
    const width = this.holder.clientWidth;
    const height = Math.max(260, Math.min(520, width * 0.56));
    this.renderer.setSize(width, height);
    this.camera.aspect = width / height;
    this.camera.updateProjectionMatrix();
    this.draw();
  }

  end(): void {
    this.scene.traverse((each) => {
      if (!(each instanceof Mesh || each instanceof LineSegments || each instanceof Sprite)) return;
      (each.geometry as BoxGeometry).dispose();
      for (const material of [each.material].flat() as MeshBasicMaterial[]) {
        material.map?.dispose();
        material.dispose();
      }
    });
    this.renderer.dispose();
    this.renderer.domElement.remove();
  }

  private draw(): void {
    const [around, up] = [this.view.azimuthDeg, this.view.elevationDeg].map((each) => (each * Math.PI) / 180) as [number, number];
    // A narrow window needs more distance to hold the same length.
    const away = this.length * this.view.distance * Math.max(1, 1.75 / this.camera.aspect);
    this.camera.position.set(away * Math.cos(up) * Math.sin(around), away * Math.sin(up), away * Math.cos(up) * Math.cos(around));
    this.camera.lookAt(0, 0, 0);
    this.renderer.render(this.scene, this.camera);
  }
}

function spaceOf(truck: TruckResultOne, ink: Ink): LineSegments {
  const box = new BoxGeometry(truck.innerLengthMm / 1000, truck.innerHeightMm / 1000, truck.innerWidthMm / 1000);
  const lines = new LineSegments(new EdgesGeometry(box), new LineBasicMaterial({ color: ink.ink }));
  lines.position.set(truck.innerLengthMm / 2000, truck.innerHeightMm / 2000, -truck.innerWidthMm / 2000);
  box.dispose();
  return lines;
}

/** A piece with its name on its sides and top; what stays where it stands carries a dot beside its name. */
function pieceOf(each: Placement, ink: Ink, isKept: boolean): Group {
  const [along, high, across] = [each.alongMm, each.heightMm, each.acrossMm].map((mm) => mm / 1000 - 0.01) as [number, number, number];
  const box = new BoxGeometry(along, high, across);
  const name = `${each.tag === null ? '' : '■ '}${each.id}${isKept ? ' ●' : ''}`;
  const face = (wide: number, tall: number) =>
    new MeshBasicMaterial({ map: textOn(name, ink, wide, tall), polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 });
  const [end, top, side] = [face(across, high), face(along, across), face(along, high)];
  const group = new Group();
  group.add(
    new Mesh(box, [end, end, top, top, side, side]),
    new LineSegments(new EdgesGeometry(box), new LineBasicMaterial({ color: ink.ink })),
  );
  group.position.set((each.xMm + each.alongMm / 2) / 1000, (each.zMm + each.heightMm / 2) / 1000, -(each.yMm + each.acrossMm / 2) / 1000);
  return group;
}

function textOn(text: string, ink: Ink, wide: number, tall: number): CanvasTexture {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(32, Math.round(wide * 160));
  canvas.height = Math.max(32, Math.round(tall * 160));
  const paint = canvas.getContext('2d')!;
  paint.fillStyle = ink.soft;
  paint.fillRect(0, 0, canvas.width, canvas.height);
  paint.fillStyle = ink.ink;
  paint.font = `600 ${Math.min(34, (canvas.width * 1.5) / Math.max(4, text.length))}px ${ink.mono}`;
  paint.textAlign = 'center';
  paint.textBaseline = 'middle';
  paint.fillText(text, canvas.width / 2, canvas.height / 2);
  return textureOf(canvas);
}

function labelOf(text: string, ink: Ink, x: number, y: number, z: number, size: number): Sprite {
  const canvas = document.createElement('canvas');
  canvas.width = 32 * Math.max(2, text.length);
  canvas.height = 64;
  const paint = canvas.getContext('2d')!;
  paint.fillStyle = ink.ink;
  paint.font = `700 44px ${ink.mono}`;
  paint.textAlign = 'center';
  paint.textBaseline = 'middle';
  paint.fillText(text, canvas.width / 2, canvas.height / 2);
  const sprite = new Sprite(new SpriteMaterial({ map: textureOf(canvas), depthTest: false }));
  sprite.scale.set((size * canvas.width) / canvas.height, size, 1);
  sprite.position.set(x, y, z);
  return sprite;
}

function textureOf(canvas: HTMLCanvasElement): CanvasTexture {
  const texture = new CanvasTexture(canvas);
  texture.colorSpace = SRGBColorSpace;
  return texture;
}
