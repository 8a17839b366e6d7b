package withers.ingest;

/** Is told how far an import is, by the thread that goes on when it returns. */
@FunctionalInterface
public interface ImportObserver {

  /** The import has come to this step. */
  void at(ImportStep step);
}
