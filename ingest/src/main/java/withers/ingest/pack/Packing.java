package withers.ingest.pack;

/** How an export is packed. */
public enum Packing {
  /** It lies there as it is. */
  PLAIN,
  /** RFC 1952, one member or several. */
  GZIP,
  /** An entry of a zip archive. */
  ZIP
}
