package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.yaml.ConfigException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PasswordFileTest {
  @TempDir private Path folder;

  @Test
  void the_first_line_is_the_password_with_the_spaces_in_it() throws IOException {
    assertThat(PasswordFile.read(file(" open sésame \r\nand a remark\n", "rw-------")))
        .isEqualTo(" open sésame ");
  }

  @ParameterizedTest
  @ValueSource(strings = {"rw-r-----", "rw----r--", "rw--w----", "rw-rw-rw-"})
  void a_file_that_others_can_read_or_write_is_refused_unread(String mode) throws IOException {
    Path file = file("secret", mode);

    assertThatThrownBy(() -> PasswordFile.read(file))
        .isInstanceOf(ConfigException.class)
        .hasMessage(
            "Expected a password file that only its owner can read, but found one that others can, too"
                + " (%s): chmod 600 it, and change the password if others may have seen it",
            file);
  }

  @Test
  void an_empty_file_and_none_are_refused() throws IOException {
    Path empty = file("\n", "rw-------");

    assertThatThrownBy(() -> PasswordFile.read(empty))
        .hasMessage("Expected a password in its first line, but found none (%s)", empty);
    assertThatThrownBy(() -> PasswordFile.read(folder.resolve("nowhere")))
        .hasMessageContaining("but found none")
        .hasMessageEndingWith("make it, with mode 600");
  }

  private Path file(String text, String mode) throws IOException {
    Path file = Files.writeString(folder.resolve("mail.password"), text);
    return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(mode));
  }
}
