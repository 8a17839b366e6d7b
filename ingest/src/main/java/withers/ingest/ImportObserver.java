package withers.ingest;

/** Is told how far an import is. */
@FunctionalInterface
public interface ImportObserver {

  /** The import has come to this step. */
  void at(ImportStep step);
}
