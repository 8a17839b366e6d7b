package withers.contact.sqlite;

import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withers.contact.ContactRef;
import withers.contact.FormStore;
import withers.contact.VaultUnavailableException;
import withers.contact.sqlite.FormSchema.FormsDamagedException;
import withers.contact.sqlite.FormSchema.FormsUnavailableException;

/**
 * Forms of contacts in an SQLite file of their own, readable by its owner alone. A file that is
 * damaged, or is none of forms, is overwritten and begun anew; one that can't be used now is left
 * as it is, and nothing is kept.
 */
public final class SqliteFormStore implements FormStore {

  private final Path path;
  private final FormFile bytes;
  private final String stamp;
  private final List<String> troubles = new ArrayList<>();
  private @Nullable OpenForms open;
  private long damaged;

  private SqliteFormStore(Path path, String stamp) {
    this.path = path;
    this.bytes = new FormFile(path);
    this.stamp = stamp;
  }

  /**
   * Opens the store, which begins empty when there is no file, or none that can be used.
   *
   * @param path in a folder that exists
   * @param stamp tells this maker of forms from any that would make another form of any contact
   */
  public static SqliteFormStore open(Path path, String stamp) {
    SqliteFormStore store = new SqliteFormStore(path, stamp);
    if (!store.bytes.exists() || store.bytes.isOurs()) {
      store.connect();
    } else {
      store.beginAnew();
    }
    return store;
  }

  /**
   * Deletes forms of contacts and overwrites them on the disk; all of them, if it is not possible
   * otherwise.
   *
   * @param path of the file, which need not exist
   * @throws VaultUnavailableException when another program is using it, or it can't be written
   */
  public static void forget(Path path, Collection<ContactRef> references) {
    FormFile bytes = new FormFile(path);
    try {
      if (bytes.exists() && bytes.isOurs()) {
        OpenForms.delete(path, references);
      } else {
        bytes.erase();
      }
    } catch (FormsDamagedException e) {
      bytes.erase();
    } catch (FormsUnavailableException e) {
      throw new VaultUnavailableException(String.valueOf(e.getMessage()), e);
    }
  }

  @Override
  public synchronized Kept find(Collection<ContactRef> references) {
    return trying(forms -> forms.find(references), new Kept());
  }

  @Override
  public synchronized void keep(Map<ContactRef, byte[]> made) {
    trying(
        forms -> {
          forms.keep(made);
          return made;
        },
        made);
  }

  @Override
  public synchronized List<String> troubles() {
    List<String> all = new ArrayList<>(troubles);
    long rows = damaged + (open == null ? 0 : open.damaged());
    if (rows > 0) {
      all.add(
          "Of the stored normal forms of contacts, %d were damaged: they are made anew."
              .formatted(rows));
    }
    return all;
  }

  @Override
  public synchronized void close() {
    OpenForms forms = open;
    if (forms != null) {
      leave(forms);
    }
  }

  private <T> T trying(Function<OpenForms, T> work, T otherwise) {
    OpenForms forms = open;
    if (forms == null) {
      return otherwise;
    }
    try {
      return work.apply(forms);
    } catch (FormsDamagedException e) {
      leave(forms);
      beginAnew();
    } catch (FormsUnavailableException e) {
      leave(forms);
      giveUp(e);
    }
    return otherwise;
  }

  private void leave(OpenForms forms) {
    damaged += forms.damaged();
    open = null;
    forms.close();
  }

  private void connect() {
    try {
      open = OpenForms.open(path, stamp);
    } catch (FormsDamagedException e) {
      beginAnew();
    } catch (FormsUnavailableException e) {
      giveUp(e);
    }
  }

  private void beginAnew() {
    troubles.add("The stored normal forms of contacts are damaged: they are made anew.");
    try {
      bytes.erase();
      open = OpenForms.open(path, stamp);
    } catch (UncheckedIOException | FormsDamagedException | FormsUnavailableException e) {
      giveUp(e);
    }
  }

  private void giveUp(RuntimeException why) {
    troubles.add("Normal forms of contacts are not stored this time: " + why.getMessage());
  }
}
