import { documentSuite } from './documents.suite.ts';

// Two halves of 10,000, in two files so that both cores have one.
documentSuite(5000, 7);
