package withers.bench;

import java.nio.file.Path;

/** Runs a stage on the files of a folder. */
@FunctionalInterface
interface StageRunner {

  /** What it took. */
  Measured run(Stage stage, Path folder) throws Exception;
}
