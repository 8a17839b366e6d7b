package withers.ingest.inbox;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.codec.receipt.ReceiptJson;
import withers.ingest.receipt.Receipt;
import withers.workspace.OwnerOnly;

/**
 * The receipts of a workspace: a JSON file for each file that was read, for its owner only.
 *
 * @param folder where they lie
 */
public record Receipts(Path folder) {

  private static final int LONGEST_NAME = 80;
  private static final int DIGITS = 12;

  /** The receipt of a file; empty when there is none, or none that can be read. */
  public Optional<Receipt> find(String file) {
    try {
      return ReceiptJson.read(Files.readString(path(file)))
          .filter(receipt -> receipt.file().equals(file));
    } catch (NoSuchFileException none) {
      return Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** All receipts that can be read, by the names of their files. */
  public List<Receipt> all() {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.toString().endsWith(".json"))
          .flatMap(file -> read(file).stream())
          .sorted(Comparator.comparing(Receipt::file))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Empty, too, for one that was replaced just now. */
  private static Optional<Receipt> read(Path file) {
    try {
      return ReceiptJson.read(Files.readString(file));
    } catch (NoSuchFileException gone) {
      return Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Keeps a receipt, in place of an earlier one of the same file. */
  public void keep(Receipt receipt) {
    try {
      OwnerOnly.folder(folder);
      OwnerOnly.replace(
          path(receipt.file()), ReceiptJson.write(receipt).getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Where a file's receipt lies: under a name that people recognise, and that no other file has.
   */
  public Path path(String file) {
    String plain = file.substring(file.lastIndexOf('/') + 1).replaceAll("[^A-Za-z0-9._-]", "_");
    String shown = plain.substring(0, Math.min(plain.length(), LONGEST_NAME));
    return folder.resolve("%s-%s.json".formatted(shown, digest(file)));
  }

  private static String digest(String file) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      byte[] digest = sha.digest(file.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest).substring(0, DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java has no SHA-256", e);
    }
  }
}
