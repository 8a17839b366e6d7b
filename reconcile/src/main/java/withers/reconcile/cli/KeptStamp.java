package withers.reconcile.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.Optional;
import withers.workspace.Workspace;

/** The stamp of everything in a program and a workspace by which people and animals are judged. */
final class KeptStamp {
  private KeptStamp() {}

  /** 64 hexadecimal digits; empty where the program can't read its own code. */
  static Optional<String> of(Workspace workspace) {
    return NormaliserStamp.of(workspace.settings().phoneRegion())
        .map(maker -> of(workspace, maker));
  }

  private static String of(Workspace workspace, String maker) {
    String parameters =
        workspace.settings().matching().map(name -> text(workspace, name)).orElse("");
    return CodeDigest.of(String.join("\n", maker, RulesStamp.of(workspace), parameters));
  }

  private static String text(Workspace workspace, String name) {
    try {
      return Files.readString(workspace.paths().root().resolve(name));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
