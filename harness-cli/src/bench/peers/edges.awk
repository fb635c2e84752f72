# Only finds contact edges: columns 3 to 18, of rows after the header.
BEGIN { FS = "," }
/^#/ { next }
!header { header = 1; next }
{
  for (i = 3; i <= 18; i++) {
    if (rows && $i != before[i]) edges++
    before[i] = $i
  }
  rows++
}
END { print edges + 0 }
