/** What a trim height is measured to. */
export type TrimMark = 'bottom edge' | 'grid' | 'top';

/** What stands between the mark of the trim height and the point, from below. */
export type RoomPart = 'grid' | 'shackles' | 'slings' | 'hooks' | 'hoist body' | 'bridle';
