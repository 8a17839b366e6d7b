package withers.cli;

/** A task was ended early, as somebody asked. Nothing half done is visible. */
public final class StoppedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public StoppedException() {
    super("Stopped, as asked: what was not finished is left for next time");
  }
}
