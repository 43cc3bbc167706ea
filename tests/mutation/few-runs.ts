import fc from 'fast-check';

// Each change of the code meets these tests anew: a few random cases notice it as well as a hundred.
fc.configureGlobal({ numRuns: 25 });
