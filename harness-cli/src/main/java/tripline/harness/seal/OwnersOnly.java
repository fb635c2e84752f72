package tripline.harness.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipal;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Files that nobody but their owner can read, on POSIX systems and on those with access lists. */
final class OwnersOnly {
  private static final boolean POSIX =
      FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

  private OwnersOnly() {}

  static void createFolder(Path folder) throws IOException {
    if (Files.isDirectory(folder)) {
      return;
    }
    if (POSIX) {
      Files.createDirectories(folder, posix("rwx------"));
    } else {
      Files.createDirectories(folder);
    }
  }

  /** A new file; it never exists without its protection. */
  static void create(Path file, String text) throws IOException {
    Set<StandardOpenOption> options =
        EnumSet.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.US_ASCII));
    if (POSIX) {
      try (SeekableByteChannel out = Files.newByteChannel(file, options, posix("rw-------"))) {
        write(out, bytes);
      }
      return;
    }
    try (SeekableByteChannel out = Files.newByteChannel(file, options)) {
      AclFileAttributeView view = Files.getFileAttributeView(file, AclFileAttributeView.class);
      if (view == null) {
        throw new IOException("this file system cannot keep a key from others");
      }
      view.setAcl(List.of(all(view.getOwner())));
      write(out, bytes);
    }
  }

  private static void write(SeekableByteChannel out, ByteBuffer bytes) throws IOException {
    while (bytes.hasRemaining()) {
      out.write(bytes);
    }
  }

  /** Whether somebody else may read the file. */
  static boolean isOpenToOthers(Path file) throws IOException {
    if (POSIX) {
      Set<PosixFilePermission> permissions = Files.getPosixFilePermissions(file);
      return permissions.stream().anyMatch(p -> !p.name().startsWith("OWNER_"));
    }
    AclFileAttributeView view =
        Files.getFileAttributeView(file, AclFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
    if (view == null) {
      return true;
    }
    UserPrincipal owner = view.getOwner();
    return view.getAcl().stream()
        .filter(e -> e.type() == AclEntryType.ALLOW && !e.principal().equals(owner))
        .anyMatch(e -> e.permissions().contains(AclEntryPermission.READ_DATA));
  }

  private static AclEntry all(UserPrincipal owner) {
    return AclEntry.newBuilder()
        .setType(AclEntryType.ALLOW)
        .setPrincipal(owner)
        .setPermissions(EnumSet.allOf(AclEntryPermission.class))
        .build();
  }

  private static FileAttribute<Set<PosixFilePermission>> posix(String permissions) {
    return PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions));
  }
}
