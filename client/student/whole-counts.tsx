/** A text whose counts are not torn apart: a line may end before `2-and`, not at its hyphen. */
export const wholeCounts = (text: string) =>
  text.split(/(\d-[a-z]+)/).map((part, at) =>
    at % 2 === 1 ? (
      <span key={at} style={{ whiteSpace: 'nowrap' }}>
        {part}
      </span>
    ) : (
      part
    ),
  );
