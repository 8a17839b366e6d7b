package withers.report.demo;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Where the project's folder is, and how this program is started, as the launcher says.
 *
 * @param folder empty when nothing said so
 * @param command what was typed to start the launcher, and can be typed again from the same place
 */
public record Home(Optional<Path> folder, String command) {

  /** A system property: the folder that holds the launcher and {@code fixtures}. */
  public static final String PROPERTY = "withers.home";

  /** A system property: what was typed to start the launcher. */
  public static final String COMMAND = "withers.command";

  private static final String ON_THE_PATH = "withers";

  /** When nothing says how it is started. */
  public Home(Optional<Path> folder) {
    this(folder, ON_THE_PATH);
  }

  /** What this process was told. */
  public static Home ofThisProcess() {
    return new Home(
        Optional.ofNullable(System.getProperty(PROPERTY)).map(Path::of),
        System.getProperty(COMMAND, ON_THE_PATH));
  }

  /** The command as a shell reads it: in quotes when it has blanks. */
  public String quotedCommand() {
    return command.indexOf(' ') < 0 ? command : '"' + command + '"';
  }
}
