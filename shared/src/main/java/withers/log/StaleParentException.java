package withers.log;

import withers.id.SourceId;

/** Another import of the same chain was committed first. Nothing of this one became visible. */
public final class StaleParentException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public StaleParentException(SourceId chain) {
    super(
        "Another import of %s was committed meanwhile; compare again and repeat".formatted(chain));
  }
}
