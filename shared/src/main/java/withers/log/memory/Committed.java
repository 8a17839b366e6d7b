package withers.log.memory;

import withers.log.ImportMarker;

/** An import that readers see. */
record Committed(ImportMarker marker, Contents contents) {}
