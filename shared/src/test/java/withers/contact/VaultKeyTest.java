package withers.contact;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.HexFormat;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class VaultKeyTest {

  private static final HexFormat HEX = HexFormat.of();

  @TempDir private Path folder;

  /**
   * RFC 4231, sections 4.2 to 4.5, recalled and then recomputed with Python's hmac module. Their
   * keys are shorter than ours; RFC 2104 fills a key up with zeros, so a filled-up key gives the
   * same code.
   */
  @ParameterizedTest
  @CsvSource({
    "0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b, 4869205468657265,"
        + " b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7",
    "4a656665, 7768617420646f2079612077616e7420666f72206e6f7468696e673f,"
        + " 5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
    "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa,"
        + " dddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddd,"
        + " 773ea91e36800e46854db8ebd09181a72959098b3ef8c122d9635514ced565fe",
    "0102030405060708090a0b0c0d0e0f10111213141516171819,"
        + " cdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcdcd,"
        + " 82558a389a443c0ea4cc819899f2083a85f0faa3e578f8077a2e3ff46729665b"
  })
  void the_code_is_hmac_sha_256(String key, String message, String code) {
    byte[] secret = Arrays.copyOf(HEX.parseHex(key), VaultKey.LENGTH);
    assertThat(HEX.formatHex(new VaultKey(1, secret).code(HEX.parseHex(message)))).isEqualTo(code);
  }

  @Test
  void another_key_gives_other_references_and_another_proof() {
    VaultKey one = VaultKey.random(1);
    VaultKey two = VaultKey.random(1);
    Contact contact = new RandomContacts(1).contact();
    assertThat(one.reference(contact))
        .isEqualTo(one.reference(contact))
        .isNotEqualTo(two.reference(contact));
    assertThat(one.proof()).isEqualTo(one.proof()).isNotEqualTo(two.proof());
  }

  @Test
  void the_secret_does_not_show() {
    assertThat(new VaultKey(3, new byte[VaultKey.LENGTH])).hasToString("VaultKey[id=3]");
  }

  @Test
  void ids_and_secrets_out_of_range_are_refused() {
    assertThatThrownBy(() -> VaultKey.random(256))
        .hasMessage("Expected a key id from 0 to 255, but found 256");
    assertThatThrownBy(() -> VaultKey.random(-1))
        .hasMessage("Expected a key id from 0 to 255, but found -1");
    assertThatThrownBy(() -> new VaultKey(1, new byte[31]))
        .hasMessage("Expected a vault key of 32 bytes, but found 31");
  }

  @Test
  void a_key_file_is_for_its_owner_alone_and_gives_the_key_back() throws IOException {
    Path file = folder.resolve("vault.key");
    VaultKey key = VaultKey.random(200);
    VaultKeyFile.create(file, key);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
        .isEqualTo("rw-------");
    VaultKey loaded = VaultKeyFile.load(file);
    assertThat(loaded.id()).isEqualTo(200);
    assertThat(loaded.proof()).isEqualTo(key.proof());
  }

  @Test
  void a_key_file_of_format_1_is_read_for_good() throws IOException {
    Path file =
        keyFile("withers contact vault key, format 1\nid 7\nsecret " + "0b".repeat(32) + "\n");
    byte[] secret = new byte[VaultKey.LENGTH];
    Arrays.fill(secret, (byte) 0x0b);
    assertThat(VaultKeyFile.load(file).proof()).isEqualTo(new VaultKey(7, secret).proof());
  }

  @Test
  void a_key_file_is_never_overwritten() throws IOException {
    Path file = folder.resolve("vault.key");
    VaultKeyFile.create(file, VaultKey.random(1));
    String before = Files.readString(file);
    assertThatThrownBy(() -> VaultKeyFile.create(file, VaultKey.random(2)))
        .isInstanceOf(VaultUnavailableException.class)
        .hasMessage("Expected no vault key yet, but found one; it is never overwritten: " + file);
    assertThat(file).hasContent(before);
    assertThat(folder).isDirectoryNotContaining("glob:**.new");
  }

  @Test
  void what_a_killed_attempt_left_is_no_key_and_stands_in_no_way() throws IOException {
    Path file = folder.resolve("vault.key");
    Files.writeString(folder.resolve("vault.key.new"), "withers contact va");
    VaultKey key = VaultKey.random(1);

    VaultKeyFile.create(file, key);

    assertThat(VaultKeyFile.load(file).proof()).isEqualTo(key.proof());
    assertThat(folder).isDirectoryNotContaining("glob:**.new");
  }

  @Test
  void a_folder_that_is_missing_is_named() {
    Path file = folder.resolve("nowhere").resolve("vault.key");
    assertThatThrownBy(() -> VaultKeyFile.create(file, VaultKey.random(2)))
        .isInstanceOf(VaultUnavailableException.class)
        .hasMessage(
            "The vault key can't be written; see that its folder exists and may be written: "
                + file);
  }

  @Test
  void a_missing_key_file_is_named() {
    Path file = folder.resolve("vault.key");
    assertThatThrownBy(() -> VaultKeyFile.load(file))
        .isInstanceOf(VaultUnavailableException.class)
        .hasMessage(
            "Expected the vault key, but found no file; restore it from its backup: " + file);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "secret",
        "withers contact vault key, format 2\nid 7\nsecret 00\n",
        "withers contact vault key, format 1\nid 7\nsecret 0b0b\n",
        "withers contact vault key, format 1\nid 999\nsecret"
            + " 0000000000000000000000000000000000000000000000000000000000000000\n"
      })
  void other_content_is_refused_without_showing_it(String content) throws IOException {
    Path file = keyFile(content);
    assertThatThrownBy(() -> VaultKeyFile.load(file))
        .isInstanceOf(VaultUnavailableException.class)
        .hasMessage(
            "Expected a vault key of format 1, but found other content; restore it from its"
                + " backup: "
                + file);
  }

  @Test
  void a_huge_file_is_refused_unread() throws IOException {
    Path file = keyFile("withers".repeat(1_000_000));
    assertThatThrownBy(() -> VaultKeyFile.load(file))
        .isInstanceOf(VaultUnavailableException.class)
        .hasMessageStartingWith("Expected a vault key of format 1, but found other content");
  }

  @Test
  void a_key_file_that_others_may_read_is_refused() throws IOException {
    Path file = folder.resolve("vault.key");
    VaultKeyFile.create(file, VaultKey.random(1));
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
    assertThatThrownBy(() -> VaultKeyFile.load(file))
        .isInstanceOf(VaultUnavailableException.class)
        .hasMessage(
            "Expected the vault key to be readable by its owner alone (rw-------), but found"
                + " rw-r-----; change that and think of the key as known: "
                + file);
  }

  private Path keyFile(String content) throws IOException {
    Path file = folder.resolve("vault.key");
    Files.write(file, content.getBytes(StandardCharsets.UTF_8));
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    return file;
  }
}
