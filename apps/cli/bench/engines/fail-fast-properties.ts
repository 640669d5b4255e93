import fc from 'fast-check';

// Read by jest before each spec of a seeded fault: that a property fails is all that is asked, not its smallest case.
fc.configureGlobal({ endOnFailure: true });
