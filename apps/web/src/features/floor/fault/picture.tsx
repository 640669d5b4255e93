import { useMutation } from '@tanstack/react-query';
import { sendFile } from '../../../platform/request.js';
import { Faults } from '../../../ui/faults.js';

/** A picture helps whoever repairs it. It needs the network: it is too large to wait on the device. */
export function Picture({ itemId }: { itemId: string }) {
  const keep = useMutation({
    mutationFn: (file: File) =>
      sendFile(`/api/pictures/${encodeURIComponent(itemId)}?name=${encodeURIComponent(file.name)}`, file, file.type),
  });
  return (
    <>
      <label className="btn plain">
        {keep.isPending ? 'Sending the picture ...' : 'Take a picture'}
        <input
          type="file"
          accept="image/jpeg,image/png"
          capture="environment"
          className="unseen"
          disabled={keep.isPending}
          onChange={(event) => {
            const file = event.target.files?.[0];
            if (file) keep.mutate(file);
          }}
        />
      </label>
      <p className="quiet">A picture helps whoever repairs it; sending it needs the network.</p>
      {keep.isSuccess && <p role="status">○ The picture is kept with {itemId}.</p>}
      <Faults of={keep.error} />
    </>
  );
}
