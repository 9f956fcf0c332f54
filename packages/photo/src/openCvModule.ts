import library from '@techstark/opencv-js';
import type { OpenCvModule } from './openCv.ts';

/**
 * The vision library as a value of a module of ours. Imported by itself it would come as a module that is a promise as
 * well (bundlers give what they wrap the prototype of what it exports), and awaiting such a module fails.
 */
export const openCvModule: OpenCvModule = { default: library as unknown as OpenCvModule['default'] };
