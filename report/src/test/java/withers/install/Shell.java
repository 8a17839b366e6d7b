package withers.install;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Writer;

/** A person's Bash: what one command changes holds for the next. */
final class Shell implements AutoCloseable {
  private static final String END = "-- that was it: ";
  private static final String HEAR_ALL = "exec 2>&1\n";

  private final Process bash;
  private final Writer typed;
  private final BufferedReader heard;

  Shell(Zip zip) throws IOException {
    bash = zip.command("bash", "--norc").redirectErrorStream(true).start();
    typed = bash.outputWriter(UTF_8);
    heard = bash.inputReader(UTF_8);
    typed.write(HEAR_ALL);
  }

  /** How a command ended, and everything that it wrote. */
  record Answer(int code, String output) {}

  /** Types one command and waits until it is done. */
  Answer type(String command) throws IOException {
    typed.write(command + " </dev/null\nprintf '\\n%s%s\\n' '" + END + "' $?\n");
    typed.flush();
    StringBuilder output = new StringBuilder();
    String line = next(command);
    while (!line.startsWith(END)) {
      output.append(line).append('\n');
      line = next(command);
    }
    output.setLength(Math.max(0, output.length() - 1)); // the line break before the mark
    return new Answer(Integer.parseInt(line.substring(END.length())), output.toString());
  }

  private String next(String command) throws IOException {
    String line = heard.readLine();
    if (line == null) {
      throw new IOException("Expected Bash to go on, but it ended with: " + command);
    }
    return line;
  }

  /** Ends it, and whatever it left running. */
  @Override
  public void close() throws IOException {
    // Once the shell has gone they are nobody's any more, and not found.
    bash.descendants().forEach(ProcessHandle::destroyForcibly);
    typed.close();
    bash.destroyForcibly();
  }
}
