package withers.ingest.known;

import java.security.SecureRandom;

/** The secret that a cache's hashes are made with, drawn anew for each cache. */
record HashKey(long first, long second) {

  static HashKey random(SecureRandom random) {
    return new HashKey(random.nextLong(), random.nextLong());
  }

  /** Never shown. */
  @Override
  public String toString() {
    return "HashKey";
  }
}
