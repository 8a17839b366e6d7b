package withers.log.sqlite;

import withers.log.Contents;
import withers.log.ImportMarker;

/** A visible import and what it brought. */
record Committed(ImportMarker marker, Contents contents) {}
