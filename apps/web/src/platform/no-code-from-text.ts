import { z } from 'zod';

// The page's rules forbid code from text, so the reader of forms does without it. First of all imports: forms are read as soon as they are made.
z.config({ jitless: true });
