import { writeMetadata } from './metadata.ts';

writeMetadata();
